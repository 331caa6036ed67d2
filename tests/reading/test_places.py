"""Where each part of the content is written."""

from generator.model.leaves import leaves
from generator.model.roles import Formula, Human, Refers
from tests.workshop import Workshop

ENTRY = """\
proof:
  title: "Proof"
  says: >-
    The last rise,
    before {oven_temperature}.
bake:
  title: 'It''s hot'
  says: |
    Line one

    line {bake_time}
"""


def test_values_and_keys(workshop: Workshop) -> None:
    workshop.write("shared/terms/more.yml", ENTRY)
    reading = workshop.read()
    assert str(reading.place("terms", "proof")) == "shared/terms/more.yml:1:1"
    assert str(reading.place("terms", "proof", "title")) == "shared/terms/more.yml:2:10"
    assert str(reading.key_place("terms", "proof", "title")) == "shared/terms/more.yml:2:3"
    assert str(reading.place("terms", "proof", "nothing", "here")) == "shared/terms/more.yml:1:1"
    assert str(reading.place("terms", "nowhere")) == "shared/terms"


def test_short_forms_have_the_place_of_what_is_written(workshop: Workshop) -> None:
    reading = workshop.read()
    step = ("procedures", "mix_the_dough", "steps", "weigh")
    assert str(reading.place(*step, "source", 0, "plain")) == "shared/procedures/mix.yml:22:15"
    assert str(reading.place(*step, "key_points", 0, "point")) == "shared/procedures/mix.yml:20:28"
    pour = ("procedures", "mix_the_dough", "steps", "pour")
    assert str(reading.place(*pour, "source", 0, "id")) == "shared/procedures/mix.yml:29:20"
    assert str(reading.place(*pour, "key_points", 0, "why")) == "shared/procedures/mix.yml:27:16"


def test_characters_through_quotes_folds_and_blocks(workshop: Workshop) -> None:
    workshop.write("shared/terms/more.yml", ENTRY)
    reading = workshop.read()

    def spot(name: str, field: str, sought: str) -> str:
        text = str(getattr(reading.library.terms[name], field))
        place = reading.spot("terms", name, field, column=text.index(sought) + 1)
        return f"{place.line}:{place.column}"

    assert spot("proof", "title", "oof") == "2:13"
    assert spot("proof", "says", "last") == "4:9"
    assert spot("proof", "says", "oven_temperature") == "5:13"
    assert spot("bake", "says", "bake_time") == "11:11"


def test_files_beside_entries_of_the_farm_come_first(workshop: Workshop) -> None:
    reading = workshop.read()
    shared = reading.file("pictures", "oven.svg")
    workshop.write("bakery/pictures/oven.svg", "<svg/>")
    own = reading.file("pictures", "oven.svg")
    assert (str(shared), str(own)) == ("shared/pictures/oven.svg", "bakery/pictures/oven.svg")
    assert reading.file("pictures", "none.svg") is None


def test_every_text_of_the_library_has_its_own_place(workshop: Workshop) -> None:
    reading = workshop.read()
    found = list(leaves(reading.library, Human, Formula, Refers))
    assert len(found) > 200
    for leaf in found:
        place = (reading.key_place if leaf.is_key else reading.place)(leaf.kind, leaf.name, *leaf.path)
        line = (workshop.folder / place.file).read_text(encoding="utf-8").split("\n")[place.line - 1]
        assert line[place.column - 1 :].lstrip("\"'").startswith(leaf.text.split()[0])
