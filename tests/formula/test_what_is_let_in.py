"""Nothing but the language gets through, whatever is typed, and all that gets through is harmless code."""

from __future__ import annotations

import ast
import re

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from generator.formula import FormulaFault, FormulaFaults, check, to_javascript, to_python
from tests.formula.kitchen import SCOPE, tree_of
from tests.repeating import TIMES
from tests.units.shop import BOOK

WORDS = """
a b mass oven heat flour rye rate[s] work[s] 2 0.5 3[kg] 0[degC] 1e9 + - * / ** ( ) , < <= == != and or not if else
for s
for s
in work span( sum( min( argmin( integral( root( allot( number( kg exp( vapour( proof( lambda : . [ ] { } ' " import
__class__ eval( := @ ~ True None await x yield 99 \\ é × 𝟚 \x00
"""
TOKENS = st.sampled_from([*WORDS.split(), "\n", "\t"])
PYTHON_NAMES = re.compile(r"\b(import|exec|eval|open|getattr|lambda\s*:|__\w+)\b")


@settings(max_examples=250 * TIMES, deadline=None, derandomize=True, database=None)
@given(st.lists(TOKENS, max_size=14).map(" ".join) | st.text(max_size=40))
@example("().__class__")
@example("9 ** 9 ** 9 ** 9")
@example("(" * 1900)
@example("-" * 1900 + "a")
@example("not " * 480 + "a")
@example("a" + " if a else a" * 150)
@example("a[" * 500)
@example("sum(" * 12 + "1" + " for s in work)" * 12)
def test_any_text_is_understood_or_refused(text: str) -> None:
    try:
        tree = tree_of(text)
        check(tree, SCOPE)
    except FormulaFaults as found:
        assert all(fault.fault and fault.column >= 1 for fault in found.faults)
        return
    except FormulaFault as fault:
        assert fault.fault and fault.column >= 1
        return
    python = to_python(tree, BOOK)
    assert not PYTHON_NAMES.search(python)
    assert not any(isinstance(node, ast.Attribute) for node in ast.walk(ast.parse(python, mode="eval")))
    assert to_javascript(tree, BOOK)


@pytest.mark.parametrize(
    "text",
    ["a.real", "a[0]", "'a'", "b'a'", "f'{a}'", "lambda: a", "[a]", "(a, b)", "{a: b}", "a if b", "*a", "a := b", "...",
     "[a for s in work]", "(a for s in work)", "a is b", "a in b", "await a", "exp(x=a)", "exp(*a)", "a @ b", "~a",
     "a[1:2]",     "1j", "0x10", "1_000", "None", "a ** 13", "a ** b", "a ** (b - b)", "2 ** 1000",
     "__builtins__", "print(a)"],
)  # fmt: skip
def test_the_rest_of_python_is_refused(text: str) -> None:
    with pytest.raises(FormulaFaults):
        tree_of(text)
