"""The schemas that editors use: up to date, and true to the model."""

from pathlib import Path

from generator.pipeline.editors import stale_schemas
from generator.pipeline.order import HERE
from generator.reading.schemas import schemas, write_schemas
from tests.product import product_library
from tests.workshop import Workshop


def test_the_schemas_beside_the_content_are_up_to_date() -> None:
    library = product_library()
    assert stale_schemas(library, HERE) == [], "run `python3 run.py schema`"


def test_units_and_measures_are_completed_by_name(workshop: Workshop) -> None:
    library = workshop.read().library
    made = schemas(library)
    quantity = made["shared/quantities.json"]["$defs"]["Quantity"]["properties"]
    assert quantity["measure"]["enum"] == sorted(library.measures)
    assert "enum" not in quantity["group"]
    assert made["shared/measures.json"]["$defs"]["Shown"]["properties"]["unit"]["enum"] == sorted(library.units)


def test_the_model_s_own_words_are_the_help(workshop: Workshop) -> None:
    step = schemas(workshop.read().library)["shared/procedures.json"]["$defs"]["Step"]
    assert step["description"] == "One action, verb first, on one row."
    assert step["properties"]["timer"]["description"] == "The quantity that a timer started from this row counts down."
    assert step["required"] == ["action", "source"]
    assert step["additionalProperties"] is False


def test_an_overlay_may_write_any_part_and_remove_any_part(workshop: Workshop) -> None:
    made = schemas(workshop.read().library)
    whole, part = made["shared/terms.json"], made["farm/terms.json"]
    assert whole["$defs"]["Term"]["required"] == ["title", "says"]
    assert "required" not in part["$defs"]["Term"]
    removable = {"anyOf": [whole["$defs"]["Term"]["properties"]["title"], {"const": "~remove"}]}
    assert part["$defs"]["Term"]["properties"]["title"] == removable
    (entry,) = part["patternProperties"].values()
    assert entry == {"anyOf": [{"$ref": "#/$defs/Term"}, {"const": "~remove"}]}


def test_nothing_is_written_that_has_not_changed(workshop: Workshop) -> None:
    library = workshop.read().library
    folder, settings = workshop.folder / "schemas", workshop.folder / ".vscode/settings.json"
    written = write_schemas(library, folder, settings, {"shared": "shared"})
    assert written[-1] == settings
    assert '"./schemas/shared/terms.json": "shared/terms/**/*.yml"' in settings.read_text(encoding="utf-8")
    times = [path.stat().st_mtime_ns for path in written]
    write_schemas(library, folder, settings, {"shared": "shared"})
    assert [path.stat().st_mtime_ns for path in written] == times
    Path(written[0]).write_text("{}")
    write_schemas(library, folder, settings, {"shared": "shared"})
    assert written[0].stat().st_size > 2
