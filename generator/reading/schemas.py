"""JSON Schemas by which an editor completes and checks entries while they are written."""

from __future__ import annotations

import json
import typing
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Any

from pydantic import TypeAdapter

from generator.model.library import Library
from generator.reading.files import KINDS
from generator.reading.overlay import AFTER, REMOVE

Schema = dict[str, Any]
_LISTED = ("units", "measures")
"""Kinds whose ids are completed by name: short lists that seldom change."""
_ANY_KEY = ("properties", "patternProperties", "$defs")
"""Mappings of a schema whose keys are names of ours, not words of the schema language."""


def write_schemas(library: Library, folder: Path, settings: Path, layers: dict[str, str]) -> list[Path]:
    """Writes a schema for each kind and layer, and the editor settings that map files to them.

    `layers` gives the folder pattern of each layer: {"shared": "content/shared", "farm": "content/farms/*"}.
    Returns the paths written, in order; each is written only where its text changed.
    """
    texts = {folder / name: _text(schema) for name, schema in schemas(library).items()}
    texts[settings] = _text(_settings(folder, settings.parent.parent, layers))
    for path, text in texts.items():
        path.parent.mkdir(parents=True, exist_ok=True)
        if not path.is_file() or path.read_text("utf-8") != text:
            path.write_text(text, "utf-8", newline="\n")
    return list(texts)


def schemas(library: Library) -> dict[str, Schema]:
    """File name to schema: `shared/units.json` for whole entries, `farm/units.json` for an overlay's parts."""
    found: dict[str, Schema] = {}
    for kind in KINDS:
        whole = _filled(_schema(kind), library)
        found[f"shared/{kind}.json"] = whole
        found[f"farm/{kind}.json"] = _partial(whole)
    return found


def _schema(kind: str) -> Schema:
    schema: Schema = json.loads(_of_model()[kind])
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}


@cache
def _of_model() -> dict[str, str]:
    """The schema of each kind as the model has it, which takes long to make, as text."""
    hints = typing.get_type_hints(Library, include_extras=True)
    template = "#/$defs/{model}"
    return {kind: json.dumps(TypeAdapter(hints[kind]).json_schema(ref_template=template)) for kind in KINDS}


def _filled(schema: Schema, library: Library) -> Schema:
    """The schema with the ids of short lists in place of the mark that a role leaves there."""
    for node in _nodes(schema):
        kinds = node.pop("refers", ())
        if len(kinds) == 1 and kinds[0] in _LISTED:
            node["enum"] = sorted(getattr(library, kinds[0]))
        _prune(node)
    return schema


def _prune(node: Schema) -> None:
    """Takes out null, which nobody may write, titles that only repeat a key, and keys that are no ids."""
    if isinstance(node.get("title"), str):
        del node["title"]
    if "patternProperties" in node:
        node["additionalProperties"] = False
    if node.get("default", ...) is None:
        del node["default"]
    kept = [part for part in node.get("anyOf", ()) if part != {"type": "null"}]
    if len(kept) == 1 and len(node["anyOf"]) == 2:
        del node["anyOf"]
        node.update(kept[0])


def _partial(schema: Schema) -> Schema:
    """What an overlay may write: any part of an entry, the word that removes it, or where it is to stand."""
    partial: Schema = json.loads(json.dumps(schema))
    for node in _nodes(partial):
        node.pop("required", None)
        for mapping in (node.get("properties", {}), node.get("patternProperties", {})):
            mapping.update({key: _removable(inner) for key, inner in mapping.items()})
        if isinstance(node.get("additionalProperties"), dict):
            node["additionalProperties"] = _removable(node["additionalProperties"])
        if "properties" in node:
            node["properties"][AFTER] = {"type": "string"}
    return partial


def _removable(schema: Schema) -> Schema:
    return {"anyOf": [schema, {"const": REMOVE}]}


def _nodes(schema: Any) -> Iterator[Schema]:  # noqa: ANN401 - JSON
    """Every schema inside a schema, innermost first, so that one may be wrapped while it is walked."""
    if isinstance(schema, list):
        for item in schema:
            yield from _nodes(item)
    elif isinstance(schema, dict):
        for key, inner in schema.items():
            for node in inner.values() if key in _ANY_KEY else [inner]:
                yield from _nodes(node)
        yield schema


def _settings(folder: Path, root: Path, layers: dict[str, str]) -> Schema:
    below = folder.relative_to(root).as_posix()
    return {
        "yaml.schemas": {
            f"./{below}/{layer}/{kind}.json": f"{pattern}/{kind}/**/*.yml"
            for layer, pattern in layers.items()
            for kind in KINDS
        }
    }


def _text(schema: Schema) -> str:
    return json.dumps(schema, indent=1, ensure_ascii=False) + "\n"
