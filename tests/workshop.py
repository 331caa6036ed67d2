"""A copy of a tiny second trade's content to break, and cases written as plain text that say what must be reported.

A case begins with `=== title`. Each `--- path` begins a file that is written into the copy (`shared/...` or
`bakery/...`; with `+` before the path it is added to the file there). `--- said` begins the problems expected, all of
them, word for word.
"""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from generator.computing import Workbook
from generator.problems import ProblemsFound
from generator.reading import Reading, read_library
from generator.rules import check_rules

OTHER_TRADE = Path(__file__).parent / "other_trade"


@dataclass(frozen=True)
class Case:
    files: dict[str, str]
    said: str


@dataclass(frozen=True)
class Workshop:
    folder: Path

    def write(self, path: str, text: str | bytes) -> Path:
        file = self.folder / path.removeprefix("+")
        file.parent.mkdir(parents=True, exist_ok=True)
        before = file.read_bytes() if path.startswith("+") else b""
        file.write_bytes(before + (text.encode() if isinstance(text, str) else text))
        return file

    def read(self) -> Reading:
        return read_library(Path("shared"), Path("bakery"))

    def said(self) -> str:
        """Everything reported about the content as it stands, from the first stage that finds anything."""
        try:
            reading = self.read()
            problems = check_rules(reading, Workbook.of(reading))
        except ProblemsFound as found:
            return str(found)
        return "\n".join(str(problem) for problem in problems)

    def try_out(self, case: Case) -> str:
        for path, text in case.files.items():
            self.write(path, text)
        return self.said()


@pytest.fixture
def workshop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Workshop:
    shutil.copytree(OTHER_TRADE, tmp_path, dirs_exist_ok=True)
    monkeypatch.chdir(tmp_path)
    return Workshop(tmp_path)


def cases(folder: Path) -> list[object]:
    """All cases in the text files of a folder, as pytest parameters named by file and title."""
    return [
        pytest.param(case, id=f"{file.stem}: {title}")
        for file in sorted(folder.glob("*.txt"))
        for title, case in _read(file.read_text(encoding="utf-8"))
    ]


def _read(text: str) -> Iterator[tuple[str, Case]]:
    for block in ("\n" + text).split("\n=== ")[1:]:
        title, *rest = ("\n" + block).split("\n--- ")
        files = dict(part.split("\n", 1) for part in rest)
        said = files.pop("said")
        yield title.strip(), Case({path: body + "\n" for path, body in files.items()}, said.strip("\n"))
