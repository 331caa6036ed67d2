"""The keys that may stand at a place in an entry, told from the model."""

from __future__ import annotations

import typing

from pydantic import BaseModel

from generator.model.library import Library


def known_keys(kind: str, name: str, path: tuple[str | int, ...]) -> list[str]:
    """The keys of the model that the path leads to."""
    annotation: object = Library
    for part in (kind, name, *path):
        annotation = _inside(annotation, part)
    model = _model(annotation)
    return list(model.model_fields) if model else []


def _inside(annotation: object, part: str | int) -> object:
    model = _model(annotation)
    if model and isinstance(part, str):
        return typing.get_type_hints(model, include_extras=False).get(part, object)
    if isinstance(part, int) and model:
        return annotation
    return typing.get_args(annotation)[-1 if typing.get_origin(annotation) is dict else 0]


def _model(annotation: object) -> type[BaseModel] | None:
    """The model class of an annotation: itself, or the one inside an optional or a tuple."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    if typing.get_origin(annotation) is dict:
        return None
    return next((found for part in typing.get_args(annotation) if (found := _model(part))), None)
