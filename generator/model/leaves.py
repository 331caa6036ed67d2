"""Every text in a library with its path and what it is for, told from the types of its fields."""

from __future__ import annotations

import types
import typing
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Annotated, Union

from pydantic import BaseModel

from generator.model.library import Library
from generator.model.roles import Formula, Human, Refers, Role

Path = tuple[str | int, ...]
_Found = tuple[Path, str, Role, bool]


@dataclass(frozen=True)
class Leaf:
    """A text (or the key of a mapping, where `is_key`) at a path inside an entry."""

    kind: str
    name: str
    path: Path
    text: str
    role: Role
    is_key: bool = False


@dataclass(frozen=True)
class _Shape:
    """What an annotation holds, as far as texts go: a role, or models, values and keys inside it."""

    role: Role | None = None
    model: type[BaseModel] | None = None
    items: _Shape | None = None
    values: _Shape | None = None
    keys: _Shape | None = None


def leaves(library: Library, *roles: type[Role], kinds: Iterable[str] = Library.model_fields) -> Iterator[Leaf]:
    """All texts of the given roles in entries of these kinds, in the order of the fields of each entry."""
    for kind in kinds:
        for leaf in _of_kind(library, kind):
            if isinstance(leaf.role, roles):
                yield leaf


def _of_kind(library: Library, kind: str) -> list[Leaf]:
    """Gathered once: a dozen rules and pages look at all of them. A copy of a library may have other entries."""
    entries = getattr(library, kind)
    known = library.gathered.get(kind)
    if known is None or known[0] is not entries:
        known = library.gathered[kind] = (entries, list(_all_texts(kind, entries)))
    return known[1]


def _all_texts(kind: str, entries: Mapping[str, BaseModel]) -> Iterator[Leaf]:
    for name, entry in entries.items():
        found: list[_Found] = []
        _gather((), entry, _Shape(model=type(entry)), found)
        for path, text, role, is_key in found:
            yield Leaf(kind, name, path, text, role, is_key)


def _gather(path: Path, value: object, shape: _Shape, found: list[_Found]) -> None:
    """Adds to one list, since a library has a hundred thousand places and generators within each other are slow."""
    if isinstance(value, str):
        if value and shape.role:
            found.append((path, value, shape.role, False))
    elif isinstance(value, BaseModel):
        for name, inner in fields(type(value)).items():
            _gather((*path, name), getattr(value, name), inner, found)
    elif isinstance(value, dict) and shape.values:
        for key, item in value.items():
            if shape.keys and shape.keys.role:
                found.append(((*path, key), key, shape.keys.role, True))
            _gather((*path, key), item, shape.values, found)
    elif isinstance(value, tuple) and shape.items:
        for number, item in enumerate(value):
            _gather((*path, number), item, shape.items, found)


@cache
def fields(model: type[BaseModel]) -> dict[str, _Shape]:
    """The fields of a model that hold texts with a role, at any depth."""
    hints = typing.get_type_hints(model, include_extras=True)
    return {name: shape for name in model.model_fields if (shape := _shape(hints[name])) is not None}


def _shape(annotation: object) -> _Shape | None:
    origin, arguments = typing.get_origin(annotation), typing.get_args(annotation)
    if origin is Annotated:
        role = next((mark for mark in reversed(arguments) if isinstance(mark, Human | Formula | Refers)), None)
        return _Shape(role=role) if role else _shape(arguments[0])
    if origin in (Union, types.UnionType):
        return next((shape for part in arguments if (shape := _shape(part))), None)
    if origin is tuple:
        items = _shape(arguments[0])
        return _Shape(items=items) if items else None
    if origin is dict:
        keys, values = _shape(arguments[0]), _shape(arguments[1])
        return _Shape(keys=keys, values=values or _Shape()) if keys or values else None
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return _Shape(model=annotation)
    return None
