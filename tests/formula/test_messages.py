"""What writers of formulas read, word for word: `messages.txt` holds formulas with carets and messages below them."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.formula import FormulaFault, FormulaFaults, check
from tests.formula.kitchen import SCOPE, tree_of

LABEL = "formula: "
BLOCKS = (Path(__file__).parent / "messages.txt").read_text(encoding="utf-8").rstrip("\n").split("\n\n")


def said_about(text: str) -> str:
    try:
        check(tree_of(text), SCOPE)
    except FormulaFaults as found:
        faults = found.faults
    except FormulaFault as fault:
        faults = (fault,)
    else:
        return "nothing"
    lines = [f"{LABEL}{text}"]
    for fault in faults:
        hint = [f"hint: {fault.hint}"] if fault.hint else []
        lines += [fault.excerpt(text)[1], fault.fault, *hint]
    return "\n".join(lines)


@pytest.mark.parametrize("block", BLOCKS, ids=lambda block: block.split("\n")[0].removeprefix(LABEL)[:40])
def test_messages(block: str) -> None:
    assert said_about(block.split("\n")[0].removeprefix(LABEL)) == block


def test_a_long_formula_is_shown_around_its_fault() -> None:
    text = "a + " * 25 + "bad + " + "c + " * 25 + "d"
    with pytest.raises(FormulaFaults) as found:
        tree_of(text)
    line, carets = found.value.faults[0].excerpt(text)
    assert len(line) <= 120
    assert line.startswith("formula: ... ") and line.endswith(" ...")
    assert line[carets.index("^") : carets.rindex("^") + 1] == "bad"


@pytest.mark.parametrize(
    ("before", "after", "cut"),
    [
        (100, 101, "... {67:167} ..."),  # a hundred signs, a third of them before the fault
        (100, 0, "... {3:103}"),
        (97, 0, "{0:100}"),
        (33, 64, "{0:100}"),
        (33, 65, "{0:100} ..."),
    ],
)
def test_of_a_long_formula_a_hundred_signs_are_shown(before: int, after: int, cut: str) -> None:
    text = ("0123456789" * 11)[:before] + "bad" + ("9876543210" * 11)[:after]
    shown = re.sub(r"\{(\d+):(\d+)\}", lambda found: text[int(found[1]) : int(found[2])], cut)
    fault = FormulaFault("unknown name", "", before + 1, before + 4)
    line, carets = fault.excerpt(text)
    assert line == f"formula: {shown}"
    assert line[len(carets) - 3 : len(carets)] == "bad" and carets.endswith(" ^^^")


def test_a_formula_on_several_lines_is_shown_on_one() -> None:
    with pytest.raises(FormulaFaults) as found:
        tree_of("a +\n  bad")
    assert found.value.faults[0].excerpt("a +\n  bad\n") == ("formula: a +   bad", "               ^^^")


@pytest.mark.parametrize(
    ("signs", "hint"),
    [
        ("×·", "write `*`"),
        ("÷", "write `/`"),
        ("−–", "write `-`"),
        ("≤", "write `<=`"),
        ("≥", "write `>=`"),
        ("≠", "write `!=`"),
        ("²", "write `** 2`"),
        ("³", "write `** 3`"),
        ("√", "write `sqrt(x)`"),
        ("°", "write the unit after the number: `60[degC]`"),
        ("{}", "use round brackets"),
        ("\"'’", "names stand without quotes"),
        ("$€§", ""),
    ],
)
def test_signs_from_print_are_told_apart(signs: str, hint: str) -> None:
    for sign in signs:
        with pytest.raises(FormulaFaults) as found:
            tree_of(f"a {sign} b")
        fault = found.value.faults[0]
        assert (fault.fault, fault.hint) == (f"`{sign}` has no place in a formula", hint)
        assert (fault.column, fault.end) == (3, 4)


@pytest.mark.parametrize(("formula", "column"), [("a b", 3), ("a + b)", 6), ("(a + b", 1), ("[a + b", 1), ("a +", 3)])
def test_what_cannot_be_read_is_one_sign(formula: str, column: int) -> None:
    with pytest.raises(FormulaFaults) as found:
        tree_of(formula)
    assert (found.value.faults[0].column, found.value.faults[0].end) == (column, column + 1)


def test_an_empty_formula() -> None:
    assert said_about(" \n ") == "formula:  \n \n         ^\nthe formula is empty"


def test_a_huge_formula_is_refused_at_once() -> None:
    assert "longer than 2000 characters" in said_about("a + " * 100_000 + "a")


def test_what_stands_before_does_not_let_it_nest_deeper() -> None:
    assert "nested too deeply" in said_about(f"min(a, a, a, a, a, {'-' * 61}a)")
    assert tree_of(f"min(a, a, a, a, a, {'-' * 40}a)")


def test_loops_in_loops_do_not_grow_without_bound() -> None:
    """Three members eight deep are 3 to the power of 8 sums, 6561; seven deep 2187 pass."""

    def nested(deep: int) -> str:
        return "sum(" * deep + "a" + "".join(f" for s{level} in work)" for level in range(deep))

    assert "nested too deeply" in said_about(nested(8))
    assert said_about(nested(7)) == "nothing"


@pytest.mark.parametrize("name", ["abs", "exp", "log", "sqrt", "ceil", "floor", "round"])
def test_functions_of_one_value_take_one(name: str) -> None:
    assert tree_of(f"{name}(a)")
    assert f"`{name}` takes 1 value, not 2" in said_about(f"{name}(a, c)")


@pytest.mark.parametrize(
    ("formula", "fault"),
    [
        ("allot(mass, work[s], rate[s] for s in work)", "the total to allot is a bare number"),
        ("allot(oven, work[s], rate[s] for s in work)", "the total to allot is a bare number"),
        ("allot(a, oven, rate[s] for s in work)", "`allot` shares out work"),
        ("allot(a, work[s], a > 1 for s in work)", "`allot` shares out work"),
        ("allot(a, a > 1, rate[s] for s in work)", "`allot` shares out work"),
    ],
)
def test_what_is_shared_out_and_among_whom(formula: str, fault: str) -> None:
    with pytest.raises(FormulaFault) as found:
        check(tree_of(formula, member="mix"), SCOPE)
    assert (found.value.fault, found.value.hint) == (fault, "")


def test_work_and_cap_go_together() -> None:
    with pytest.raises(FormulaFault) as found:
        check(tree_of("allot(a, work[s], work[s] for s in work)", member="mix"), SCOPE)
    assert found.value.fault == "a work of `s/loaf` does not go with a cap of `s/loaf`"
    assert found.value.hint == "one divided by the work is what the cap limits"
