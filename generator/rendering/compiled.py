"""Templates as the Python that they become: to make that of all takes as long as to fill them."""

from __future__ import annotations

import hashlib
from importlib import metadata
from pathlib import Path

from jinja2.bccache import Bucket, BytecodeCache

from generator.reading.remembering import recall, remember


class CompiledTemplates(BytecodeCache):
    """Remembers them while the process lasts, and longer in a folder where one is given.

    Jinja itself looks whether a template or Python has changed. `habits` are how it is told to read templates.
    """

    _known: dict[tuple[str, str], bytes] = {}  # noqa: RUF012 - all share it

    def __init__(self, memory: Path | None, habits: object) -> None:
        self._reader = repr((metadata.version("jinja2"), habits))
        self._memory = memory

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fills the bucket, where the template is known as it now reads."""
        code = self._known.get(self._name(bucket)) or (
            recall(self._file(bucket, self._memory)) if self._memory else None
        )
        if code:
            bucket.bytecode_from_string(code)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Remembers what is in the bucket."""
        code = self._known[self._name(bucket)] = bucket.bytecode_to_string()
        if self._memory:
            remember(self._file(bucket, self._memory), code)

    def _file(self, bucket: Bucket, memory: Path) -> Path:
        return memory / hashlib.sha256(f"{self._reader}{bucket.key}".encode()).hexdigest()

    def _name(self, bucket: Bucket) -> tuple[str, str]:
        return f"{self._reader}{bucket.key}", bucket.checksum
