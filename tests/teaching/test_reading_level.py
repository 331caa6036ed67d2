"""Sentences of steps read near the level of a twelve-year-old.

Measured by the grade of Kincaid and others (1975), as remembered:
0.39 words a sentence + 11.8 syllables a word - 15.59.
Grade 6 is school for those of eleven and twelve. Syllables are groups of vowels, but for a silent e at the end.
"""

from __future__ import annotations

import re

import pytest

from generator.model.library import Library
from generator.model.procedure import Procedure

GRADE = 6
HIGHEST = 8
"""A procedure of few and long trade terms may lie two grades above."""


def syllables(word: str) -> int:
    bare = re.sub(r"(?<=[^aeiouyl])e$|(?<=[^aeiouytd])ed$|es$(?<![sxz]es)", "", word.casefold())
    return max(1, len(re.findall(r"[aeiouy]+", bare)))


def grade(sentences: list[str]) -> float:
    split = [re.findall(r"[A-Za-z’'-]+", part) for text in sentences for part in re.split(r"[.:?!]+(?:\s|$)", text)]
    words = [words for words in split if words]
    count = sum(map(len, words))
    return 0.39 * count / len(words) + 11.8 * sum(syllables(word) for one in words for word in one) / count - 15.59


def said(procedure: Procedure) -> list[str]:
    return [re.sub(r"\{[^}]*\}", "ten", step.action) for step in procedure.steps.values()]


@pytest.mark.parametrize(
    ("word", "count"),
    [
        ("knife", 1),
        ("bird", 1),
        ("water", 2),
        ("temperature", 4),
        ("table", 2),
        ("washed", 1),
        ("tested", 2),
        ("eye", 1),
    ],
)
def test_syllables_are_counted_as_one_hears_them(word: str, count: int) -> None:
    assert syllables(word) == count


def test_the_measure_tells_hard_from_easy() -> None:
    assert grade(["Put both hands over the wings."]) < 3
    assert grade(["Subsequent evisceration necessitates meticulous examination of abdominal cavities."]) > 15


def test_steps_read_at_the_level_of_a_twelve_year_old(library: Library) -> None:
    assert grade([text for procedure in library.procedures.values() for text in said(procedure)]) <= GRADE


def test_no_procedure_is_far_above(library: Library) -> None:
    grades = {name: round(grade(said(procedure)), 1) for name, procedure in library.procedures.items()}
    assert {name: found for name, found in grades.items() if found > HIGHEST} == {}
