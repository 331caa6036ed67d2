"""The YAML parser's complaints in the words of someone who writes content."""

from __future__ import annotations

import yaml

from generator.problems import Place, Problem

_AT_THE_END = "unexpected end of stream"
_FIT = "this does not fit the lines above"
_FITS = "check the indentation, and that text after a closing quote stands inside it"
_CLOSE = "put text with brackets in quotes; separate the parts with commas and end with `{}`"
_WORDS = (
    ("values are not allowed", "a second colon, or a line indented too far", "put text that contains `: ` in quotes"),
    ("entries are not allowed", "a list begins in mid-line", "begin each `- ` on its own line, or write `[a, b]`"),
    ("expected ',' or ']'", "a list `[` is not closed", _CLOSE.format("]")),
    ("expected ',' or '}'", "a mapping `{` is not closed", _CLOSE.format("}")),
    (_AT_THE_END, "a quote is not closed", "end the text with the quote that it begins with"),
    ("expected ':'", "a line has no colon", "write `key: value`; indent a line that continues the text above"),
    ("expected key", _FIT, _FITS),
    ("'-' indicator", "a list stops here without its `- `", "begin the line with `- `, or check the indentation"),
    ("expected <block end>", _FIT, _FITS),
    ("cannot start any token", "text may not begin with this character", "put the text in quotes"),
    ("node content", "a value is missing here", "check the brackets and commas around it"),
    ("escape char", "an unknown `\\` escape", "use single quotes; in them `\\` is only a character"),
    ("numeric character", "text may not begin with `*` or `&`", "put the text in quotes"),
    ("document start", "text after the end of the document", "take out `...` and brackets that close nothing"),
    ("nesting depth", "nested too deep", "check the brackets"),
)
"""A fragment of the complaint, the fault and its remedy; the first that fits is taken."""


def explain(error: yaml.YAMLError, file: str) -> Problem:
    """One problem for what the parser met; it stops at the first, so there is never a second."""
    said = str(getattr(error, "problem", None) or error).splitlines()[0]
    mark = getattr(error, "problem_mark", None)
    if _AT_THE_END in said:  # what is to be mended is where it begins
        mark = getattr(error, "context_mark", None) or mark
    place = Place(file, mark.line + 1, mark.column + 1) if mark else Place(file)
    for fragment, fault, hint in _WORDS:
        if fragment in said:
            return Problem(place, fault, hint)
    return Problem(place, f"not YAML that can be read: {said}", "check the quotes, colons and indentation here")
