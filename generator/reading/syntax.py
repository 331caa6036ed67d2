"""The YAML parser's complaints in the words of someone who writes content."""

from __future__ import annotations

import yaml

from generator.problems import Place, Problem

_WORDS = (
    (
        "mapping values are not allowed",
        "a second colon on the line, or a line indented too far",
        "put text that contains `: ` in quotes; give keys of one entry the same indentation",
    ),
    (
        "sequence entries are not allowed",
        "a list begins in the middle of a line",
        "begin each `- ` on its own line, or write `[a, b]`",
    ),
    ("expected ',' or ']'", "a list `[` is not closed", "separate its parts with commas and end it with `]`"),
    ("expected ',' or '}'", "a mapping `{` is not closed", "separate its parts with commas and end it with `}`"),
    (
        "unexpected end of stream",
        "a quote is opened and never closed",
        "end the text with the same quote it begins with",
    ),
    ("expected ':'", "a line has no colon", "write `key: value`; indent a line that continues the text above"),
    (
        "expected key",
        "this does not fit the lines above",
        "check the indentation, and that text after a closing quote stands inside it",
    ),
    (
        "expected <block end>",
        "this does not fit the lines above",
        "check the indentation, and that text after a closing quote stands inside it",
    ),
    (
        "expected '-' indicator",
        "a list stops here without its `- `",
        "begin the line with `- `, or check the indentation",
    ),
    ("cannot start any token", "text may not begin with this character", "put the text in quotes"),
    ("node content", "a value is missing here", "check the brackets and commas around it"),
    ("escape char", "an unknown `\\` escape in double quotes", "use single quotes, in which `\\` is only a character"),
    ("alphabetic or numeric character", "text may not begin with `*` or `&`", "put the text in quotes"),
    (
        "document start",
        "text after the end of the document",
        "take out the line `...` and the brackets that close nothing",
    ),
    ("nesting depth", "nested too deep", "check the brackets"),
)


def explain(error: yaml.YAMLError, file: str) -> Problem:
    """One problem for what the parser met; it stops at the first, so there is never a second."""
    mark = getattr(error, "problem_mark", None)
    place = Place(file, mark.line + 1, mark.column + 1) if mark else Place(file)
    said = _plain(error)
    for fragment, fault, hint in _WORDS:
        if fragment in said:
            return Problem(place, fault, hint)
    return Problem(place, f"not YAML that can be read: {said}", "check the quotes, colons and indentation here")


def _plain(error: yaml.YAMLError) -> str:
    """The complaint alone, without the context and the place; the two parsers differ in one word of it."""
    said = str(getattr(error, "problem", None) or error).splitlines()[0]
    return said.replace("block sequence entries", "sequence entries")
