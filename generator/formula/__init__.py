"""The formula language: text, through a whitelist, to one tree, and from the tree to code and to words."""

from generator.formula.checking import check, check_gives
from generator.formula.fault import FormulaFault, FormulaFaults
from generator.formula.javascript_code import to_javascript
from generator.formula.kinds import TRUTH, Kind, Measured, Truth, Word
from generator.formula.parsing import parse
from generator.formula.python_code import to_python
from generator.formula.scope import Argument, Function, Scope, Table
from generator.formula.tree import Node, calls, names
from generator.formula.wording import Wording
from generator.formula.working import Working, show_in_words, show_working

__all__ = [
    "TRUTH",
    "Argument",
    "FormulaFault",
    "FormulaFaults",
    "Function",
    "Kind",
    "Measured",
    "Node",
    "Scope",
    "Table",
    "Truth",
    "Word",
    "Wording",
    "Working",
    "calls",
    "check",
    "check_gives",
    "names",
    "parse",
    "show_in_words",
    "show_working",
    "to_javascript",
    "to_python",
]
