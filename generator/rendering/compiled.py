"""Templates as the Python that they become: to make that of all takes as long as to fill them."""

from __future__ import annotations

import hashlib
import os
from importlib import metadata
from pathlib import Path

from jinja2.bccache import Bucket, BytecodeCache

_DIGEST = hashlib.sha256().digest_size


class CompiledTemplates(BytecodeCache):
    """Remembers them while the process lasts, and longer in a folder where one is given.

    Jinja itself looks whether a template or Python has changed. `habits` are how it is told to read templates.
    """

    _known: dict[tuple[str, str], bytes] = {}  # noqa: RUF012 - all share it

    def __init__(self, memory: Path | None, habits: object) -> None:
        self._reader = repr((metadata.version("jinja2"), habits))
        self._memory = memory
        if memory:
            memory.mkdir(parents=True, exist_ok=True)

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fills the bucket, where the template is known as it now reads."""
        code = self._known.get(self._name(bucket)) or self._recall(bucket)
        if code:
            bucket.bytecode_from_string(code)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Remembers what is in the bucket."""
        code = self._known[self._name(bucket)] = bucket.bytecode_to_string()
        if self._memory:
            unfinished = self._memory / f"{bucket.key}.{os.getpid()}"
            unfinished.write_bytes(hashlib.sha256(code).digest() + code)
            unfinished.replace(self._file(bucket, self._memory))

    def _recall(self, bucket: Bucket) -> bytes:
        """What the folder has of it; a file that was cut short or spoiled is as good as none."""
        try:
            stored = self._file(bucket, self._memory).read_bytes() if self._memory else b""
        except FileNotFoundError:
            return b""
        code = stored[_DIGEST:]
        return code if hashlib.sha256(code).digest() == stored[:_DIGEST] else b""

    def _file(self, bucket: Bucket, memory: Path) -> Path:
        return memory / hashlib.sha256(f"{self._reader}{bucket.key}".encode()).hexdigest()

    def _name(self, bucket: Bucket) -> tuple[str, str]:
        return f"{self._reader}{bucket.key}", bucket.checksum
