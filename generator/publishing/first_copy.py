"""All that packs well in one file: so a phone's first copy comes in one piece, and weighs half of what its files do."""

from __future__ import annotations

import json
import lzma
from collections import Counter
from collections.abc import Mapping
from pathlib import Path

from generator.publishing.digest import digest
from generator.publishing.shared_lines import share_lines

KINDS = {
    ".css": "text/css",
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript",
    ".json": "application/json",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".webmanifest": "application/manifest+json",
}
"""What packs well, and what it is called when a phone unpacks it. Pictures, fonts and papers are packed already."""
_SETTINGS = {"id": lzma.FILTER_LZMA1, "preset": 6, "dict_size": 1 << 22, "pb": 0, "nice_len": 273}
"""A window of 4 MB sees most of a site at once: it is the pages' likeness that packs. Text is not aligned (`pb`)."""
_SIZE = slice(5, 13)
END = "\x02"
"""Ends each text; none of ours holds it. Lengths written out would weigh more."""


def packs_well(file: Path) -> bool:
    """Whether a file is text."""
    return file.suffix in KINDS


def write_pack(pack: Path, files: Mapping[str, Path]) -> str:
    """Packs what packs well of the files, by their addresses; gives the digest by which the worker checks it.

    Its first line has the addresses by the kind of file; after it come the lines that many files share, and the files
    in that order. Those of a kind lie together: they are most alike. First come those that others have the most to copy
    from: pages of the fullest folder, and of all else the largest.
    """
    read = {address: file.read_bytes() for address, file in files.items() if packs_well(file)}
    pages = Counter(_folder(address) for address in read if files[address].suffix == ".html")

    def likeness(address: str) -> tuple[str, int, str]:
        kind = files[address].suffix
        return kind, -(pages[_folder(address)] if kind == ".html" else len(read[address])), address

    lines, shortened = share_lines({address: read[address].decode() for address in sorted(read, key=likeness)})
    listed: dict[str, list[str]] = {}
    for address in shortened:
        listed.setdefault(KINDS[files[address].suffix], []).append(address)
    head = json.dumps(listed, ensure_ascii=False, separators=(",", ":"))
    texts = ("\n".join(lines), *shortened.values())
    packed = packed_with_size("".join([head, "\n", *(text + END for text in texts)]).encode())
    pack.write_bytes(packed)
    return digest(packed)


def _folder(address: str) -> str:
    return address.partition("/")[0]


def packed_with_size(content: bytes) -> bytes:
    """LZMA that tells its size, as those who unpack it want it; Python's library leaves it open and marks the end."""
    packed = lzma.compress(content, lzma.FORMAT_ALONE, filters=[_SETTINGS])
    return packed[: _SIZE.start] + len(content).to_bytes(8, "little") + packed[_SIZE.stop :]
