"""The software bill of materials: every package that builds and serves, as CycloneDX 1.6 (the open ECMA-424)."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from importlib import metadata

_BLOCK = re.compile(r"^(?P<name>[a-z0-9.-]+)==(?P<version>[^ ;\\]+).*\n(?P<rest>(?:[ ].*\n?)*)", re.MULTILINE)
_HASH = re.compile(r"--hash=sha256:([0-9a-f]{64})")
_NEEDED_BY = re.compile(r"^ +#(?: via)? +(?P<name>[a-z0-9.-]+)$", re.MULTILINE)
_READ_BY_HAND = {"resvg-py": "MIT", "axe-playwright-python": "MIT"}
"""Licences that stand in a package's files only."""
_OLD_NAMES = {
    "BSD": "BSD License",
    "Apache 2.0": "Apache-2.0",
    "Apache Software License": "Apache-2.0",
    "MIT License": "MIT",
    "Mozilla Public License 2.0 (MPL 2.0)": "MPL-2.0",
}


@dataclass(frozen=True)
class Part:
    """One package as the lock pins it."""

    name: str
    version: str
    hashes: tuple[str, ...]
    """SHA-256 of each file that may be installed for it, in hexadecimal."""
    needed_by: tuple[str, ...]

    @property
    def address(self) -> str:
        """Its package URL, by which scanners know it."""
        return f"pkg:pypi/{self.name}@{self.version}"


def parts_of(lock: str) -> list[Part]:
    """All packages of a lock's text, in its order."""
    return [
        Part(block["name"], block["version"], tuple(_HASH.findall(block["rest"])), tuple(_needing(block["rest"])))
        for block in _BLOCK.finditer(lock)
    ]


def licence_of(name: str) -> str:
    """What the installed package says of its licence. Raises importlib.metadata.PackageNotFoundError."""
    about = metadata.metadata(name)
    classified = [line.rpartition(" :: ")[2] for line in about.get_all("Classifier") or [] if "License :: " in line]
    told = [*(about[name] for name in ("License-Expression", "License") if name in about), *classified]
    short = [text for text in told if text and text != "UNKNOWN" and len(text) < 40]
    found = _READ_BY_HAND.get(name) or next(iter(short), "not told")
    return _OLD_NAMES.get(found, found)


def bill_of_materials(lock: str, product: str, version: str) -> str:
    """The bill as JSON: the same lock, the same text. It has no date and no number, which the standard leaves free."""
    parts = parts_of(lock)
    whole = {"type": "application", "bom-ref": product, "name": product, "version": version}
    uses = {product: [part.address for part in parts if "" in part.needed_by]}
    uses |= {part.address: [other.address for other in parts if part.name in other.needed_by] for part in parts}
    bill = {
        "bomFormat": "CycloneDX",
        "specVersion": "1.6",
        "version": 1,
        "metadata": {"component": whole},
        "components": [_component(part) for part in parts],
        "dependencies": [{"ref": ref, "dependsOn": sorted(needed)} for ref, needed in uses.items()],
    }
    return json.dumps(bill, indent=1) + "\n"


def _needing(comment: str) -> Iterator[str]:
    """Names of packages; empty where we ask for it ourselves."""
    if "-r requirements/" in comment:
        yield ""
    yield from (found["name"] for found in _NEEDED_BY.finditer(comment) if found["name"] != "via")


def _component(part: Part) -> dict[str, object]:
    licence = licence_of(part.name)
    is_expression = re.fullmatch(r"[\w.-]*\d[\w.-]*(?: (?:OR|AND) [\w.-]+)*|MIT|ISC", licence)
    return {
        "type": "library",
        "bom-ref": part.address,
        "name": part.name,
        "version": part.version,
        "purl": part.address,
        "licenses": [{"expression": licence} if is_expression else {"license": {"name": licence}}],
        "hashes": [{"alg": "SHA-256", "content": content} for content in part.hashes],
    }
