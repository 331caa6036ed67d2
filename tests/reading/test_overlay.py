"""A farm's own entries over the shared ones."""

from generator.reading import Reading
from tests.workshop import Workshop


def test_mappings_are_merged_and_the_rest_replaced(workshop: Workshop) -> None:
    workshop.write(
        "bakery/procedures/own.yml",
        "bake_the_loaves:\n  who: Ida\n  needs: [scale]\n  steps:\n    load: {action: Load them.}\n"
        "    cool: {action: Cool them., source: common practice}\n",
    )
    before, after = (part.library.procedures["bake_the_loaves"] for part in (_shared(workshop), workshop.read()))
    assert after.who == "Ida"
    assert after.needs == ("scale",)
    assert after.steps["load"].action == "Load them."
    assert after.steps["load"].picture == "oven"
    assert list(after.steps) == ["load", "bake", "spray", "cool"]
    assert after.steps["bake"] == before.steps["bake"]


def _shared(workshop: Workshop) -> Reading:
    own = workshop.folder / "bakery/procedures/own.yml"
    text = own.read_text()
    own.unlink()
    reading = workshop.read()
    own.write_text(text)
    return reading


def test_what_is_removed_is_gone(workshop: Workshop) -> None:
    workshop.write("bakery/terms/own.yml", "crumb: ~remove\n")
    workshop.write("bakery/procedures/own.yml", "bake_the_loaves:\n  steps: {spray: ~remove}\n  stops: ~remove\n")
    library = workshop.read().library
    assert library.terms == {}
    assert list(library.procedures["bake_the_loaves"].steps) == ["load", "bake"]
    assert library.procedures["bake_the_loaves"].stops == {}


def test_a_source_is_replaced_whole(workshop: Workshop) -> None:
    workshop.write("bakery/sources/own.yml", "own-book: {title: Our book, read: original}\n")
    workshop.write("bakery/quantities/own.yml", "salt_share: {value: 1.8 percent, source: {id: own-book}}\n")
    (citation,) = workshop.read().library.quantities["salt_share"].source
    assert (citation.id, citation.place) == ("own-book", "")


def test_entries_of_the_farm_alone_stand_beside_the_shared_ones(workshop: Workshop) -> None:
    workshop.write("bakery/terms/own.yml", "crust: {title: Crust, says: What crackles.}\n")
    assert list(workshop.read().library.terms) == ["crumb", "crust"]


def test_the_shared_content_is_not_touched(workshop: Workshop) -> None:
    files = sorted((workshop.folder / "shared").rglob("*.*"))
    before = [file.read_bytes() for file in files]
    workshop.read()
    assert [file.read_bytes() for file in files] == before


def test_what_a_farm_adds_or_has_already_comes_after_what_it_names(workshop: Workshop) -> None:
    workshop.write(
        "bakery/procedures/own.yml",
        "bake_the_loaves:\n  steps:\n"
        "    wipe: {~after: load, action: Wipe the peel., source: common practice}\n"
        "    bake: {~after: spray}\n",
    )
    assert list(workshop.read().library.procedures["bake_the_loaves"].steps) == ["load", "wipe", "spray", "bake"]


def test_what_a_farm_adds_may_come_after_what_it_adds_further_down(workshop: Workshop) -> None:
    step = "action: Wipe the peel., source: common practice"
    workshop.write(
        "bakery/procedures/own.yml",
        f"bake_the_loaves:\n  steps:\n    turn: {{~after: lift, {step}}}\n    lift: {{~after: load, {step}}}\n"
        f"    wipe: {{~after: load, {step}}}\n",
    )
    steps = list(workshop.read().library.procedures["bake_the_loaves"].steps)
    assert steps == ["load", "lift", "turn", "wipe", "bake", "spray"]
