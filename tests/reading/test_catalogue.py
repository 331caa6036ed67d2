"""Catalogues are read as GNU gettext's manual, "The Format of PO Files", has them (from memory), or refused."""

from __future__ import annotations

import contextlib
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as some

from generator.problems import ProblemsFound
from generator.reading.catalogue import read_catalogue
from tests.repeating import TIMES
from tests.workshop import Workshop

TORN = (
    "is no line of a gettext catalogue\n"
    '    hint: write `msgid`, `msgstr` or nothing, and then the text in quotes; a quote in it is `\\"`'
)
AMISS = (
    "stands in the wrong place\n"
    "    hint: write `msgid` with the English, and below it one `msgstr` with its translation"
)


def said(workshop: Workshop, text: str | bytes) -> str:
    workshop.write("shared/translations/es.po", text)
    with pytest.raises(ProblemsFound) as found:
        read_catalogue(Path("shared/translations/es.po"))
    return str(found.value)


@pytest.mark.parametrize(
    ("text", "line", "fault"),
    [
        ('msgid "Two"\nmsgstr "dos\n', 2, TORN),
        ('msgid "Two"\nmsgstr dos"\n', 2, TORN),
        ("msgid \"Two\"\nmsgstr 'dos'\n", 2, TORN),
        ('msgid "Two"\nmsgstr "do"s"\n', 2, TORN),
        ('msgid "Two"\nmsgstr "dos" "tres"\n', 2, TORN),
        ('msgid "Two"\nmsgstr "dos\\"\n', 2, TORN),
        ('msgid "Two"\nmsgstr "d\\os"\n', 2, TORN),
        ('msgid "Two"\nmsgstr ""\n"dos \n"y tres"\n', 3, TORN),
        ('msgid "Two\nmsgstr "dos"\n', 1, TORN),
        ("# two\nmsgid two\n", 2, TORN),
        ('msgid "Two"\nmsgtxt "dos"\n', 2, TORN),
        ('msgid "One"\nmsgstr "uno"\n\n#~ msgid "Two"\n#~ msgstr "dos\n', 5, TORN),
        ('msgstr "dos"\n\nmsgid "One"\nmsgstr "uno"\n', 1, f"`msgstr` {AMISS}"),
        ('msgid "One"\nmsgstr "uno"\nmsgstr "dos"\n', 3, f"`msgstr` {AMISS}"),
        ('msgid "One"\nmsgid "Two"\nmsgstr "dos"\n', 2, f"`msgid` {AMISS}"),
    ],
)
def test_a_torn_line_is_told_with_its_number(workshop: Workshop, text: str, line: int, fault: str) -> None:
    assert said(workshop, text) == f"shared/translations/es.po:{line}: {fault}"


def test_a_text_without_translation_is_told_with_its_number(workshop: Workshop) -> None:
    assert said(workshop, '# a\n\nmsgid "Two"\n') == (
        "shared/translations/es.po:3: not a gettext catalogue: missing msgstr for msgid 'Two'\n"
        "    hint: mend it, or make it anew from the template of messages"
    )


def test_a_text_that_stands_twice_is_told_with_both_lines(workshop: Workshop) -> None:
    one, other = 'msgid "Two"\nmsgstr "dos"\n\n', '# of another hand\nmsgid ""\n"Tw"\n"o"\nmsgstr "dues"\n'
    assert said(workshop, one + other) == (
        "shared/translations/es.po:5: says the English of line 1 once more\n"
        "    hint: keep the one with the right translation, and take the other out"
    )


def test_a_text_may_stand_again_in_another_context_or_among_the_old_ones(workshop: Workshop) -> None:
    text = (
        'msgid "Two"\nmsgstr "dos"\n\nmsgctxt "a"\nmsgid "Two"\nmsgstr "a dos"\n\n#~ msgid "Two"\n#~ msgstr "Viejo"\n'
    )
    read_catalogue(workshop.write("shared/translations/es.po", text))


def test_a_date_that_is_none(workshop: Workshop) -> None:
    """Pythons differ in what they take for a date, and so in the words."""
    told = said(workshop, 'msgid ""\nmsgstr "POT-Creation-Date: \\n "\n')
    assert told.startswith("shared/translations/es.po: not a gettext catalogue: ")
    assert told.endswith("\n    hint: mend it, or make it anew from the template of messages")


def test_bytes_that_are_no_text(workshop: Workshop) -> None:
    assert said(workshop, b'msgid "a"\nmsgstr "\xff"\n') == (
        "shared/translations/es.po:2: not UTF-8: byte 0xFF at offset 18\n"
        "    hint: save the file as UTF-8 in your editor"
    )


def test_of_a_file_torn_throughout_the_first_lines_are_told(workshop: Workshop) -> None:
    assert said(workshop, "x\n" * 1000).count("is no line of a gettext catalogue") == 20


def test_what_the_format_allows_is_read(workshop: Workshop) -> None:
    file = workshop.write(
        "shared/translations/es.po",
        '\ufeff# by hand\r\n#, fuzzy\r\nmsgid ""\r\nmsgstr ""\r\n"Language: es\\n"\r\n\r\n  msgctxt "a"\r\n'
        '  msgid   "Say \\"two\\"\\n"\r\n  msgstr ""\r\n"Di "\r\n"\\"dos\\"\\\\\\t"\r\n\r\n'
        '#~ msgid "Old"\r\n#~ msgstr "Viejo"\r\n',
    )
    catalogue = read_catalogue(file)
    assert [message.string for message in catalogue if message.id == 'Say "two"\n'] == ['Di "dos"\\\t']
    assert [message.string for message in catalogue.obsolete.values()] == ["Viejo"]


PIECES = ["msgid", "msgstr", "msgctxt", " ", '"', '""', "\\", "\\n", "\n", "#", "#~ ", "#, fuzzy", "two", "msgstr[1]"]
HEADS = ["Plural-Forms: ", "nplurals=x", "Content-Type: ", "charset=none", "POT-Creation-Date: ", "Language: ", ";"]


@given(text=some.lists(some.sampled_from(PIECES + HEADS), max_size=25).map("".join))
@settings(max_examples=200 * TIMES, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None)
def test_whatever_a_file_holds_it_is_read_or_told(text: str, tmp_path: Path) -> None:
    file = tmp_path / "es.po"
    for whole in (text, f'msgid ""\nmsgstr "{text}"\n'):
        file.write_text(whole, encoding="utf-8")
        with contextlib.suppress(ProblemsFound):
            read_catalogue(file)
