"""Bytes that were costly to make, kept in a folder from one build to the next."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

_DIGEST = hashlib.sha256().digest_size


def recall(file: Path) -> bytes | None:
    """What a file was given to remember; one that was cut short or spoiled is as good as none."""
    try:
        stored = file.read_bytes()
    except FileNotFoundError:
        return None
    content = stored[_DIGEST:]
    return content if hashlib.sha256(content).digest() == stored[:_DIGEST] else None


def remember(file: Path, content: bytes) -> None:
    """Several processes may do so at once: each writes a file of its own first."""
    file.parent.mkdir(parents=True, exist_ok=True)
    unfinished = file.with_name(f"{file.name}.{os.getpid()}")
    unfinished.write_bytes(hashlib.sha256(content).digest() + content)
    unfinished.replace(file)
