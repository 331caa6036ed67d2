"""Content in another language."""

import pytest

from generator.formula import wording
from generator.model.leaves import leaves
from generator.model.roles import Human
from generator.problems import ProblemsFound
from generator.reading.messages import extract, template
from generator.reading.translation import Translation
from generator.units import showing
from tests.workshop import Workshop

SPANISH = """\
msgid ""
msgstr "Content-Type: text/plain; charset=UTF-8\\n"

#. terms/crumb: title
msgid "Crumb"
msgstr "Miga"

msgid "Pour in {water_mass} of water at {water_temperature first}."
msgstr "Vierta {water_temperature first}: {water_mass} de agua."

#, fuzzy
msgid "Oven"
msgstr "Horno, tal vez"

msgid "Room"
msgstr ""
"""


def spanish(workshop: Workshop, *layers: str) -> Translation:
    return Translation.of("es", [workshop.folder / layer for layer in layers])


def test_texts_come_from_the_catalogue(workshop: Workshop) -> None:
    workshop.write("shared/translations/es.po", SPANISH)
    said = spanish(workshop, "shared", "bakery")
    assert said.text("Crumb") == "Miga"
    assert said.text("Pour in {water_mass} of water at {water_temperature first}.").startswith("Vierta")


def test_what_is_missing_empty_or_fuzzy_stays_english(workshop: Workshop) -> None:
    workshop.write("shared/translations/es.po", SPANISH)
    said = spanish(workshop, "shared")
    assert [said.text(text) for text in ("Oven", "Room", "Never heard of")] == ["Oven", "Room", "Never heard of"]


def test_a_farm_has_its_own_words(workshop: Workshop) -> None:
    workshop.write("shared/translations/es.po", SPANISH)
    workshop.write("bakery/translations/es.po", 'msgid "Crumb"\nmsgstr "Migajón"\n')
    assert spanish(workshop, "shared", "bakery").text("Crumb") == "Migajón"
    assert workshop.said() == ""


def test_english_needs_no_catalogue(workshop: Workshop) -> None:
    said = Translation.of("en", [workshop.folder / "shared"])
    assert said.text("Pour in {water_mass}.") == "Pour in {water_mass}."


def test_a_language_without_a_catalogue(workshop: Workshop) -> None:
    with pytest.raises(ProblemsFound) as found:
        spanish(workshop, "shared", "bakery")
    assert str(found.value) == (
        "shared/translations/es.po: there is no such translation\n    hint: make it from the template of messages"
    )


def test_names_in_braces_must_be_kept(workshop: Workshop) -> None:
    workshop.write(
        "shared/translations/es.po",
        'msgid "Add {salt_mass first}."\nmsgstr "Añada {sal}."\n\nmsgid "Wait {proof_time}."\nmsgstr "Espere."\n',
    )
    with pytest.raises(ProblemsFound) as found:
        spanish(workshop, "shared")
    assert str(found.value) == (
        "shared/translations/es.po:1: the names in braces are {sal}\n"
        "    hint: the English text has {salt_mass first}\n"
        "shared/translations/es.po:4: the names in braces are none\n"
        "    hint: the English text has {proof_time}"
    )


def test_every_text_for_people_is_in_the_template_once(workshop: Workshop) -> None:
    library = workshop.read().library
    texts = {leaf.text for leaf in leaves(library, Human)} | {*showing.WORDS, *wording.WORDS}
    catalog = extract(library)
    messages = [str(message.id) for message in catalog if message.id]
    assert len(messages) == len(set(messages))
    assert set(messages) <= texts
    assert {text for text in texts - set(messages) if text.strip("%°/") != "" and any(map(str.isalpha, text))} == set()
    assert "An invented baking handbook, for tests only" not in messages
    assert catalog["Crumb"].auto_comments == ["terms/crumb: title"]


def test_the_template_is_the_same_each_time(workshop: Workshop) -> None:
    library = workshop.read().library
    text = template(library)
    assert text == template(library)
    assert '#. procedures/bake_the_loaves: stops.burnt_hand.tell\nmsgid "The baker"\nmsgstr ""\n' in text
    workshop.write("shared/translations/es.po", text)
    assert spanish(workshop, "shared").texts == {}
