"""What a phone unpacks is what Python's `lzma`, which is liblzma, packed: the reference of the format."""

import base64
import json
import lzma
import random
from functools import cache
from pathlib import Path

import pytest
from py_mini_racer import JSEvalException, MiniRacer

from generator.pipeline.order import HERE
from generator.publishing.first_copy import packed_with_size, write_pack
from generator.publishing.shared_lines import share_lines

SIXTY_FOUR = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/"
BYTES = f"""
const bytesOf = (text) => new Uint8Array([...text.matchAll(/..../g)].flatMap(([four]) => {{
  const [a, b, c, d] = [...four].map((sign) => Math.max(0, "{SIXTY_FOUR}".indexOf(sign)));
  return [a << 2 | b >> 4, (b & 15) << 4 | c >> 2, (c & 3) << 6 | d].slice(0, 3 - (four.match(/=/g) ?? []).length);
}}));
class TextDecoder {{ decode = (bytes) => decodeURIComponent(escape(String.fromCharCode(...bytes))); }}
const codesOf = (text) => [...text].map((sign) => sign.charCodeAt(0));
class TextEncoder {{ encode = (text) => new Uint8Array(codesOf(unescape(encodeURIComponent(text)))); }}
const hexOf = (bytes) => Array.from(bytes, (it) => it.toString(16).padStart(2, "0")).join("");
"""


@cache
def phone() -> MiniRacer:
    engine = MiniRacer()
    engine.eval((HERE / "site_overrides/unpacking.js").read_text(encoding="utf-8") + BYTES)
    return engine


def unpacked(packed: bytes) -> bytes:
    text = json.dumps(base64.b64encode(packed).decode())
    return bytes.fromhex(str(phone().eval(f"hexOf(unpack(bytesOf({text})))")))


def packed_otherwise(content: bytes, **settings: int) -> bytes:
    """With the size in its head, as `packed_with_size` has it, but with other settings."""
    packed = lzma.compress(content, lzma.FORMAT_ALONE, filters=[{"id": lzma.FILTER_LZMA1, **settings}])
    return packed[:5] + len(content).to_bytes(8, "little") + packed[13:]


def made_up(chance: random.Random) -> bytes:
    """Noise, repetitions near and far, and runs of one byte."""
    parts = [chance.randbytes(chance.choice((0, 1, 7, 300)))]
    for _ in range(chance.randrange(40)):
        whole = b"".join(parts)
        start = chance.randrange(len(whole) + 1)
        repeated = whole[start : start + chance.choice((2, 3, 9, 17, 300))] * chance.choice((1, 1, 2, 9))
        parts.append(chance.choice((repeated, chance.randbytes(2), b"a" * chance.randrange(400))))
    return b"".join(parts)


@pytest.mark.parametrize("seed", range(60))
def test_whatever_was_packed_comes_out(seed: int) -> None:
    chance = random.Random(seed)
    content = made_up(chance)
    before = chance.randrange(5)
    settings = {"lc": before, "lp": chance.randrange(5 - before), "pb": chance.randrange(5)}
    assert unpacked(packed_otherwise(content, preset=chance.choice((0, 3, 9)), **settings)) == content
    assert unpacked(packed_with_size(content)) == content


def test_far_copies_come_out() -> None:
    """Distances of all lengths, to nearly a megabyte."""
    chance = random.Random(1)
    noise = chance.randbytes(60)
    gaps = (chance.randbytes(1 << power) if power < 17 else b"\0" * (1 << power) for power in range(20))
    content = b"".join(noise + gap for gap in gaps)
    assert unpacked(packed_with_size(content)) == content


def test_the_pack_is_lzma_for_anybody(tmp_path: Path) -> None:
    page, look, picture = (tmp_path / name for name in ("index.html", "all.css", "icon.png"))
    page.write_bytes(b"<p>warm</p>")
    look.write_bytes(b"a{}")
    picture.write_bytes(b"\x89PNG")
    write_pack(tmp_path / "kept.lzma", {"": page, "look/all.css": look, "icon.png": picture})
    head, _, content = lzma.decompress((tmp_path / "kept.lzma").read_bytes()).partition(b"\n")
    assert json.loads(head) == {"text/css": ["look/all.css"], "text/html; charset=utf-8": [""]}
    assert content == b"\x02a{}\x02<p>warm</p>\x02"


def packed_and_unpacked(folder: Path, texts: dict[str, str]) -> dict[str, str]:
    """What a phone has of each page that was packed, checked to be of its kind."""
    for name, text in texts.items():
        (folder / f"{name}.html").write_bytes(text.encode())
    write_pack(folder / "kept.lzma", {name: folder / f"{name}.html" for name in texts})
    packed = json.dumps(base64.b64encode((folder / "kept.lzma").read_bytes()).decode())
    each = f"filesIn(unpack(bytesOf({packed}))).map((it) => [it.path, it.type, hexOf(it.bytes)])"
    files = json.loads(str(phone().eval(f"JSON.stringify({each})")))
    assert {kind for _, kind, _ in files} == {"text/html; charset=utf-8"}
    return {name: bytes.fromhex(content).decode() for name, _, content in files}


def test_lines_that_many_texts_share_are_put_back(tmp_path: Path) -> None:
    """More of them than there are signs of one byte; letters of all lengths stand beside them."""
    lines = [f"<p class='frame'>{number} °F · 鶏 🐔</p>" for number in range(300)]
    texts = {f"{number}": "\n".join(["é", *lines[number:], f"only {number}"]) for number in range(40)}
    shared, shortened = share_lines(texts)
    assert sorted(shared) == sorted(lines[19:])
    assert len("".join(shortened.values())) < len("".join(texts.values())) / 8
    assert packed_and_unpacked(tmp_path, texts) == texts


def test_texts_that_hold_the_mark_are_left_alone(tmp_path: Path) -> None:
    texts = {f"{number}": "a line that many texts have\n\x01!" for number in range(40)}
    assert share_lines(texts) == ([], texts)
    assert packed_and_unpacked(tmp_path, texts) == texts


def test_what_is_spoiled_is_refused_or_comes_out_otherwise() -> None:
    """It ends in any case; the worker holds each file against its hash."""
    content = b"scald, pluck, chill. " * 40
    packed = packed_with_size(content)
    for place in range(13, len(packed)):
        spoiled = bytearray(packed)
        spoiled[place] ^= 0x41
        try:
            assert len(unpacked(bytes(spoiled))) == len(content)
        except JSEvalException as fault:
            assert "RangeError" in str(fault)
