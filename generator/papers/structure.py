"""Takes out of the tree of tags what says nothing: holders of one other tag, labels without a letter, borders.

A cell's heading is known from its column, since headings have a scope, and is not named again. See ISO 32000-1, 14.7.2,
14.8.4.3 and 14.8.5.
"""

from __future__ import annotations

import re

from generator.papers.objects import Bodies

_HOLDER = re.compile(rb"/S/Div/P (\d+) 0 R/K\[(\d+) 0 R\]>>")
_EMPTY_LABEL = re.compile(rb"/S/Lbl/P \d+ 0 R(?:/K\[\])?>>")
_KIDS = re.compile(rb"(?<=/K\[)[^\]]*(?=\])")
_PARENT = re.compile(rb"(?<=/P )\d+(?= 0 R)")
_SAYS_NOTHING = re.compile(
    rb"<</O/Layout/(?:Border[^>]*|Placement/Block)>>|<</O/Table/Headers\[[^\]]*\]>>|/Headers\[[^\]]*\]|/ID\(U[x\dy]*\)"
)
_NAMES = re.compile(rb"/IDTree<</Names\[[^\]]*\]>>")
_NO_ATTRIBUTES = re.compile(rb"/A\[\]")


def unwrapped(bodies: Bodies) -> dict[int, bytes]:
    """All objects with a smaller tree: tags that hold content are all there, in their order."""
    tags = {n: body for n, body in bodies.items() if body.startswith(b"<</Type/StructElem")}
    holders = {n: held for n, body in tags.items() if (held := _HOLDER.search(body)) and int(held[2]) in tags}
    empty = {n for n, body in tags.items() if _EMPTY_LABEL.search(body)}
    down = {n: int(held[2]) for n, held in holders.items()}
    up = {n: int(held[1]) for n, held in holders.items()}
    kept = {n: body for n, body in bodies.items() if n not in holders and n not in empty}
    for n in kept.keys() & tags.keys():
        body = _KIDS.sub(lambda kids: _kids(kids[0], down, empty), kept[n])
        body = _PARENT.sub(lambda parent: b"%d" % _end(int(parent[0]), up), body)
        kept[n] = _NO_ATTRIBUTES.sub(b"", _SAYS_NOTHING.sub(b"", body))
    roots = (n for n, body in kept.items() if body.startswith(b"<</Type/StructTreeRoot"))
    return kept | {n: _NAMES.sub(b"", kept[n]) for n in roots}


def _kids(listed: bytes, down: dict[int, int], empty: set[int]) -> bytes:
    def follow(found: re.Match[bytes]) -> bytes:
        number = _end(int(found[1]), down)
        return b"" if number in empty else b"%d 0 R" % number

    return b" ".join(re.sub(rb"(\d+) 0 R", follow, listed).split(b" ")).strip()


def _end(number: int, chain: dict[int, int]) -> int:
    while number in chain:
        number = chain[number]
    return number
