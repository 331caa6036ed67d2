"""Where in a file a character of a text stands, through quotes, folded lines and block style."""

from __future__ import annotations

from pathlib import Path

from generator.problems import Place
from generator.reading.tree import Node


def find_spot(node: Node, column: int) -> Place:
    """The place of the character at `column` (from 1) of the node's text.

    YAML only ever changes the white space of a text (escapes in double quotes aside), so the n-th visible
    character as read is the n-th visible one as written.
    """
    text = str(node.value)
    visible = len("".join(text[: column - 1].split()))
    try:
        lines = Path(node.place.file).read_text("utf-8-sig").split("\n")
    except OSError:
        return node.place
    line, start = node.place.line, node.place.column
    if node.style in ("|", ">"):
        line, start = line + 1, 1
    elif node.style:
        start += 1
    for number in range(line, len(lines) + 1):
        for position in range(start if number == line else 1, len(lines[number - 1]) + 1):
            if lines[number - 1][position - 1].isspace():
                continue
            if visible == 0:
                return node.place._replace(line=number, column=position)
            visible -= 1
    return node.place
