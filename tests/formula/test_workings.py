"""Formulas shown to people: in words, and with numbers in SI that multiply out by hand."""

from __future__ import annotations

import math
import re
from dataclasses import replace

import pytest

from generator.formula import show_working
from generator.units import plainly
from tests.formula.kitchen import VALUES, by_python, tree_of, wording
from tests.formula.reader_of_maths import read_numbers


def read_aloud(markup: str) -> str:
    """The text of a working; bars as `/` between braces, powers as `^`, cells of one row apart by a blank."""
    for pattern, said in [
        (r"<mfrac>", "{"), (r"</mfrac>", "}"), (r"<msup>", "⟨"), (r"</msup>", "⟩"), (r"<msqrt>", "√("),
        (r"</msqrt>", ")"), (r"</mtr><mtr>", "\n"), (r"</mtd><mtd>", " "), (r"<[^>]*>", ""),
    ]:  # fmt: skip
        markup = re.sub(pattern, said, markup)
    return markup.replace("\u00a0", " ").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&")


def words(text: str, member: str = "") -> str:
    return read_aloud(show_working("mass", tree_of(text, member), wording(plainly)).words)


def numbers(text: str, **values: float) -> str:
    told = replace(wording(plainly), values={**VALUES, **values})
    return read_aloud(show_working("mass", tree_of(text), told).numbers)


@pytest.mark.parametrize(
    ("formula", "in_words", "in_numbers"),
    [
        ("loaves * loaf_mass", "= Loaves×Dough for one loaf", "= 24 loaves×0.9 kg/loaf\n= 12.5 kg"),
        ("a - (b - c)", "= A−(B−C)", "= 2−(−3.5−0.25)\n= 12.5 kg"),
        ("(a - b) - c", "= A−B−C", "= 2−(−3.5)−0.25\n= 12.5 kg"),
        ("a * (b * c)", "= A×B×C", "= 2×(−3.5)×0.25\n= 12.5 kg"),
        ("a * (b + c)", "= A×(B+C)", "= 2×(−3.5+0.25)\n= 12.5 kg"),
        ("-(a + b)", "= −(A+B)", "= −(2+(−3.5))\n= 12.5 kg"),
        ("(a / b) * c", "= {AB}×C", "= {2−3.5}×0.25\n= 12.5 kg"),
        ("(a + b) ** 2", "= ⟨(A+B)2⟩", "= ⟨(2+(−3.5))2⟩\n= 12.5 kg"),
        ("d ** 2", "= ⟨(D)2⟩", "= ⟨72⟩\n= 12.5 kg"),
        ("heat / 333.55[kJ/kg]", "= {Heat333.55 kJ/kg}", "= {4200 J333 550 J/kg}\n= 12.5 kg"),
        ("oven - 20[degC]", "= Oven−20 °C", "= 503.15 K−293.15 K\n= 12.5 kg"),
        ("number(mass, lb)", "= {Dough1 lb}", "= 27.5578\n= 12.5 kg"),
        ("number(oven, degC)", "= Oven in °C", "= 230\n= 12.5 kg"),
        ("vapour(oven)", "= Vapour(Oven)", "= Vapour(503.15 K)\n= 12.5 kg"),
        ("abs(b) + sqrt(d)", "= |B|+√(D)", "= |−3.5|+√(7)\n= 12.5 kg"),
        (
            "min(a, c, 1[loaf] / loaves)",
            "= smallest of(A;C;{1 loafLoaves})",
            "= smallest of(2;0.25;{1 loaf24 loaves})\n= 12.5 kg",
        ),
        ("sum(work[s] for s in work)", "= Work mix+Work bake+Work pack", "= 50 s/loaf+66 s/loaf+20 s/loaf\n= 12.5 kg"),
        (
            "a if flour == rye else c",
            "= {A if Flour is Rye\nC otherwise",
            "= {2 if Rye is Rye\n0.25 otherwise\n= 12.5 kg",
        ),
        ("a if b == 2 and c != 3 else d", "= {A if B=2 and C≠3\nD otherwise", None),
        ("a if flour != rye else c", "= {A if Flour is not Rye\nC otherwise", None),
        ("a if not (a < b or c > d) else c if b <= 0 else 3", "= {A if not (A<B or C>D)\nC if B≤0\n3 otherwise", None),
        ("a if b >= c else d", "= {A if B≥C\nD otherwise", "= {2 if −3.5≥0.25\n7 otherwise\n= 12.5 kg"),
        ("exp(a * b) * c", "= ⟨eA×B⟩×C", "= ⟨e2×(−3.5)⟩×0.25\n= 12.5 kg"),
        ("a * -2.5", "= A×(−2.5)", "= 2×(−2.5)\n= 12.5 kg"),
        ("round(a)", "= rounded(A)", "= rounded(2)\n= 12.5 kg"),
        ("+a * b", "= A×B", "= 2×(−3.5)\n= 12.5 kg"),
        ("rise(oven, c)", "= Rise(Oven;C)", "= Rise(503.15 K;0.25)\n= 12.5 kg"),
        ("a ** 2. + d ** (1 / 10)", "= ⟨(A)2⟩+⟨(D)0.1⟩", "= ⟨22⟩+⟨70.1⟩\n= 12.5 kg"),
        ("-60[degC] + room", "= −60 °C+Room", "= 213.15 K+295.15 K\n= 12.5 kg"),
        ("rate[mix] * integral(work[mix] / 1[s] for t in span(0[s], 9[s]))", None, None),
    ],
)
def test_both_lines(formula: str, in_words: str | None, in_numbers: str | None) -> None:
    if in_words is not None:
        assert words(formula) == in_words
    if in_numbers is not None:
        assert numbers(formula) == in_numbers
    assert "<math" in show_working("mass", tree_of(formula), wording()).words


def test_long_sums_and_products_take_a_row_for_each_part() -> None:
    product = "loaves * loaf_mass * heat * work[mix] * work[bake]"
    assert words(product) == "= Loaves\n× Dough for one loaf\n× Heat\n× Work mix\n× Work bake"
    above_a_bar = words(f"{product} / 1[K]")
    assert above_a_bar == "= { Loaves\n× Dough for one loaf\n× Heat\n× Work mix\n× Work bake1 K}"
    rows = words("work[mix] * loaf_mass * loaves + work[bake] * loaf_mass * loaves - heat * 1[kg] / 1[W]").split("\n")
    assert [row.split(" ")[0] for row in rows] == ["=", "+", "−"]


def test_many_arguments_stand_below_each_other() -> None:
    shown = show_working("mass", tree_of("min(work[mix], work[bake])"), wording())
    assert shown.words.count("<mtr>") == 1
    shown = show_working("mass", tree_of("min(loaf_mass, loaf_mass * a, loaf_mass * b, loaf_mass * c)"), wording())
    assert 'class="stack"' in shown.words


def test_a_bracket_round_wide_arguments_closes_behind_the_last_of_them() -> None:
    """In a row of its own below an argument that is itself of several rows."""
    wide = "max(loaf_mass, loaf_mass * 2, loaf_mass * 3)"
    inner = "largest of(\nDough for one loaf;\nDough for one loaf×2;\nDough for one loaf×3)"
    assert words(f"min(loaf_mass * 4, {wide})") == f"= smallest of(\nDough for one loaf×4;\n{inner}\n)"
    assert words(f"min({wide}, loaf_mass * 4)") == f"= smallest of(\n{inner};\nDough for one loaf×4)"


def test_the_split_names_its_places() -> None:
    said = words("allot(a, work[s], rate[s] for s in work)", member="bake")
    assert said.startswith("= share of Bake in the fastest split(\nA;\nMix: Work mix,Rate mix;\nBake:")


@pytest.mark.parametrize(("pick", "which"), [("argmin", "smallest"), ("argmax", "largest")])
def test_a_choice_among_members_names_them(pick: str, which: str) -> None:
    said = words(f"{pick}(rate[s] for s in work)")
    assert said == f"= name of the {which} of(\nMix: Rate mix;\nBake: Rate bake;\nPack: Rate pack)"


def test_options_are_named_by_their_choice_and_members_by_themselves() -> None:
    told = replace(wording(plainly), option=lambda choice, option: f"<{choice}/{option}>")
    for formula, shown in [
        ("a if flour == rye else c", "Flour is <flour/rye>"),
        ("argmin(rate[s] for s in work)", "</mix>: Rate mix"),
        ("allot(a, work[s], rate[s] for s in work)", "share of </bake> in the fastest split"),
    ]:
        assert shown in read_aloud(show_working("mass", tree_of(formula, "bake"), told).words)


def test_brackets_stand_round_negative_numbers_alone() -> None:
    assert numbers("a * 0.5") == "= 2×0.5\n= 12.5 kg"
    assert numbers("a * b", b=-0.5) == "= 2×(−0.5)\n= 12.5 kg"
    assert numbers("a * b", b=0.0) == "= 2×0\n= 12.5 kg"
    assert numbers("number(oven, degC) ** 2") == "= ⟨2302⟩\n= 12.5 kg"
    assert numbers("number(room, degC) ** 2", room=263.15) == "= ⟨(−10)2⟩\n= 12.5 kg"


def test_numbers_can_be_repainted() -> None:
    markup = show_working("mass", tree_of("loaves * loaf_mass"), wording(plainly)).numbers
    assert '<mn data-quantity="loaves" data-unit="loaf">24</mn>' in markup
    assert '<mn data-quantity="loaf_mass" data-unit="kg/loaf">0.9</mn>' in markup
    assert '<mn data-quantity="mass" data-unit="kg">12.5</mn>' in markup
    markup = show_working(
        "mass", tree_of("number(oven, degC) * 1[kg] if flour == rye else mass"), wording(plainly)
    ).numbers
    assert '<mn data-quantity="oven" data-unit="degC">230</mn>' in markup
    assert '<mi data-quantity="flour">Rye</mi>' in markup


def test_a_refused_quantity_shows_a_dash() -> None:
    known = {name: value for name, value in VALUES.items() if name not in ("mass", "loaves", "flour")}
    tree = tree_of("loaves * loaf_mass if flour == rye else mass")
    shown = show_working("mass", tree, replace(wording(plainly), values=known))
    assert '<mn data-quantity="loaves" data-unit="loaf">–</mn>' in shown.numbers
    assert '<mi data-quantity="flour">–</mi>' in shown.numbers


@pytest.mark.parametrize(
    ("formula", "drawn"),
    [
        ("mass ** (1 / 2)", "<mtd><msqrt><mi>Dough</mi></msqrt></mtd>"),
        ("mass ** (1 / 3)", "<mtd><mroot><mrow><mi>Dough</mi></mrow><mn>3</mn></mroot></mtd>"),
        ("mass ** (1 / 9)", "<mtd><mroot><mrow><mi>Dough</mi></mrow><mn>9</mn></mroot></mtd>"),
        ("mass ** (1 / 10)", "<mrow><mn>0.1</mn></mrow></msup></mtd>"),
        ("mass ** (2 / 3)", "<mrow><mfrac><mn>2</mn><mn>3</mn></mfrac></mrow></msup></mtd>"),
        ("mass ** (1 / 12)", "<mrow><mfrac><mn>1</mn><mn>12</mn></mfrac></mrow></msup></mtd>"),
    ],
)
def test_roots_are_drawn_as_roots_up_to_the_ninth(formula: str, drawn: str) -> None:
    assert drawn in show_working("mass", tree_of(formula), wording()).words


def test_titles_are_words_not_markup() -> None:
    tricky = replace(wording(), title=lambda name: f"<b>{name}</b> & co")
    assert "&lt;b&gt;a&lt;/b&gt; &amp; co" in show_working("mass", tree_of("a"), tricky).words


def test_signs_keep_their_distance_from_titles() -> None:
    """`mtext` counts as white space, so that a row of it and one sign would be drawn without any distance."""
    assert show_working("mass", tree_of("loaves * loaf_mass"), wording()).words.count("<mi>") == 2


def test_words_are_translated() -> None:
    spanish = {"if": "si", "otherwise": "si no", "is": "es", "smallest of": "el menor de"}
    told = replace(wording(), translate=lambda text: spanish.get(text, text))
    said = read_aloud(show_working("mass", tree_of("min(a, b) if flour == rye else c"), told).words)
    assert said == "= {el menor de(A;B) si Flour es Rye\nC si no"


@pytest.mark.parametrize(
    "formula",
    ["2 - (3 - 4)", "2 / (3 / 4)", "2 / 3 / 4", "-(2 ** 2)", "(-2) ** 2", "(2 ** 3) ** 2", "(2 / 3) ** 2",
     "2 - -3", "2 * -3",
     "exp(2) ** 2", "(a if a > b else c) * 2", "2 * (a if a > b else c if c > d else d)", "-b ** 2", "abs(b - a) ** 3",
     "sqrt(d) ** 3", "-(b + c) * 2", "(a + b) * (c + d) / (a - b)", "ceil(a / 3) ** 2", "b ** -2",
     "number(mass, lb) ** 2",
     "(oven - room) / 1[K] * (2[kg] / mass) ** 0.5", "max(a, -b) ** 2 - min(a, b, c)",
     "1 if 1 < a < 3 and not b > 0 else 2"],
)  # fmt: skip
def test_a_person_reads_what_the_formula_means(formula: str) -> None:
    tree = tree_of(formula)
    read, _ = read_numbers(show_working("mass", tree, wording()).numbers)
    assert math.isclose(read, by_python(tree), rel_tol=1e-12)
