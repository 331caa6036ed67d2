"""How large each unit is: asked of the unit library once, and remembered, because asking takes most of a second."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Mapping
from copy import deepcopy
from dataclasses import dataclass
from fractions import Fraction
from functools import cache, lru_cache
from pathlib import Path
from typing import Any

from generator.units.dimension import Dimension


@dataclass(frozen=True)
class Size:
    """A value in SI is number x factor + offset."""

    factor: Fraction
    offset: Fraction
    dimension: Dimension


def size_units(definitions: Mapping[str, str], bases: tuple[str, ...], memory: Path | None) -> dict[str, Size]:
    """Sizes by unit text; a text that the unit library does not understand is left out."""
    asked = json.dumps([list(definitions.items()), sorted(bases)])
    key = hashlib.sha256(asked.encode()).hexdigest()
    remembered = _recall(memory, key)
    if remembered is None:
        remembered = _ask(tuple(definitions.items()), bases)
        _remember(memory, key, remembered)
    return remembered


@lru_cache
def _ask(definitions: tuple[tuple[str, str], ...], bases: tuple[str, ...]) -> dict[str, Size]:
    registry = deepcopy(_registry())  # a quarter of the time of a new one
    for base in bases:
        registry.define(f"{base} = [{base}]")
    sizes = {}
    for text, definition in definitions:
        try:
            sizes[text] = _size(registry, definition)
        except Exception:  # whatever the library trips over, the unit is not one it knows
            continue
    return sizes


@cache
def _registry() -> Any:  # noqa: ANN401 - the library's registry is built at run time
    import pint  # only here: loading it is what takes the time

    return pint.UnitRegistry(non_int_type=Fraction, cache_folder=None)


def _size(registry: Any, definition: str) -> Size:  # noqa: ANN401 - the library's registry is built at run time
    written = registry.Quantity(definition)
    one, zero = written.to_base_units(), registry.Quantity(Fraction(0), written.units).to_base_units()
    return Size(Fraction(one.m) - Fraction(zero.m), Fraction(zero.m), Dimension.of(dict(one.unit_items())))


def _recall(memory: Path | None, key: str) -> dict[str, Size] | None:
    try:
        stored = json.loads(memory.read_text("utf-8")) if memory else {}
        if stored.get("key") != key:
            return None
        return {text: _from_json(size) for text, size in stored["sizes"].items()}
    except (OSError, ValueError, KeyError, TypeError, AttributeError):
        return None


def _remember(memory: Path | None, key: str, sizes: Mapping[str, Size]) -> None:
    if not memory:
        return
    stored = {"key": key, "sizes": {text: _to_json(size) for text, size in sizes.items()}}
    try:
        memory.parent.mkdir(parents=True, exist_ok=True)
        unfinished = memory.with_name(f"{memory.name}.{os.getpid()}")
        unfinished.write_text(json.dumps(stored), "utf-8")
        unfinished.replace(memory)
    except OSError:
        return  # remembering only saves time


def _to_json(size: Size) -> list[Any]:
    return [str(size.factor), str(size.offset), {base: str(power) for base, power in size.dimension.powers}]


def _from_json(stored: list[Any]) -> Size:
    factor, offset, powers = stored
    return Size(
        Fraction(factor), Fraction(offset), Dimension.of({base: Fraction(power) for base, power in powers.items()})
    )
