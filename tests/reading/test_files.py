"""Files and folders that are not as they should be."""

import os
from pathlib import Path

import pytest

from generator.problems import ProblemsFound
from generator.reading import read_library
from generator.reading.files import KINDS
from tests.workshop import Workshop

TERM = "proof: {title: Proof, says: A rise that takes its time.}\n"


def test_a_file_that_is_not_utf8(workshop: Workshop) -> None:
    workshop.write("shared/terms/bad.yml", b"proof:\n  title: P\xe9trin\n")
    assert workshop.said() == (
        "shared/terms/bad.yml:2: not UTF-8: byte 0xE9 at offset 17\n    hint: save the file as UTF-8 in your editor"
    )


def test_a_file_in_utf16(workshop: Workshop) -> None:
    workshop.write("shared/terms/bad.yml", TERM.encode("utf-16"))
    assert workshop.said() == (
        "shared/terms/bad.yml:1: not UTF-8: byte 0xFF at offset 0\n    hint: save the file as UTF-8 in your editor"
    )


def test_a_huge_file_is_not_read(workshop: Workshop, monkeypatch: pytest.MonkeyPatch) -> None:
    file = workshop.write("shared/terms/bad.yml", "")
    os.truncate(file, 10_000_000)
    read_bytes = Path.read_bytes
    monkeypatch.setattr(Path, "read_bytes", lambda path: pytest.fail("read") if path == file else read_bytes(path))
    assert workshop.said() == (
        "shared/terms/bad.yml: the file is 10.0 MB; the limit is 1 MB\n    hint: split it into smaller files"
    )


def test_a_byte_order_mark_and_windows_line_ends_are_fine(workshop: Workshop) -> None:
    workshop.write("shared/terms/more.yml", b"\xef\xbb\xbfproof:\r\n  title: Proof\r\n  says: A rise.\r\n")
    reading = workshop.read()
    assert reading.library.terms["proof"].says == "A rise."
    assert str(reading.place("terms", "proof", "says")) == "shared/terms/more.yml:3:9"


def test_hidden_characters(workshop: Workshop) -> None:
    workshop.write("shared/terms/bad.yml", "proof: {title: Pro\u200bof, says: A\u202e rise.}\n# \x07\n")
    assert workshop.said().splitlines()[::2] == [
        "shared/terms/bad.yml:1:19: hidden character U+200B",
        "shared/terms/bad.yml:1:31: hidden character U+202E",
        "shared/terms/bad.yml:2:3: hidden character U+0007",
    ]


def test_a_missing_folder() -> None:
    with pytest.raises(ProblemsFound) as found:
        read_library(Path("no_such_content"), Path("nor_this"))
    assert str(found.value) == (
        "no_such_content: there is no such folder\n    hint: name the folder that holds the content\n"
        "nor_this: there is no such folder\n    hint: name the folder that holds the content"
    )


def test_a_file_in_place_of_a_folder(workshop: Workshop) -> None:
    workshop.write("page.yml", "")
    with pytest.raises(ProblemsFound) as found:
        read_library(Path("shared"), Path("page.yml"))
    assert str(found.value) == ("page.yml: is a file, not a folder\n    hint: name the folder that holds the content")


def test_files_out_of_place(workshop: Workshop) -> None:
    workshop.write("shared/proof.yml", TERM)
    workshop.write("shared/term/proof.yml", TERM)
    workshop.write("shared/terms/proof.yaml", TERM)
    workshop.write("shared/terms/Crust.yml.txt", TERM)
    workshop.write("shared/terms/crust.json", "{}")
    workshop.write("shared/terms/oven.svg", "<svg/>")
    kinds = ", ".join(KINDS)
    assert workshop.said() == (
        f"shared/proof.yml: stands outside the folder of a kind\n    hint: move it into one of: {kinds}\n"
        "shared/term: unknown kind of content `term`\n    hint: did you mean `terms`?\n"
        "shared/terms/Crust.yml.txt: is not read: the name of an entry file ends in `.yml`\n"
        "    hint: rename it to `crust.yml`\n"
        "shared/terms/crust.json: is not read: it is not an entry file\n"
        "    hint: move it out of the content, or end its name in `.yml`\n"
        "shared/terms/oven.svg: is not read: it is not an entry file\n"
        "    hint: move it out of the content, or end its name in `.yml`\n"
        "shared/terms/proof.yaml: is not read: the name of an entry file ends in `.yml`\n"
        "    hint: rename it to `proof.yml`"
    )


def test_a_link_to_a_folder(workshop: Workshop) -> None:
    (workshop.folder / "shared/terms/again").symlink_to(workshop.folder / "shared", target_is_directory=True)
    assert workshop.said() == (
        "shared/terms/again: is a link to a folder, and links are not followed\n    hint: copy the folder here"
    )


def test_notes_and_litter_are_passed_over(workshop: Workshop) -> None:
    for path in ("shared/NOTES.md", "shared/terms/.DS_Store", "shared/terms/terms.yml~", "shared/.git/terms/a.yml"):
        workshop.write(path, b"\xff")
    assert "crumb" in workshop.read().library.terms


def test_entries_may_stand_in_folders_of_folders(workshop: Workshop) -> None:
    workshop.write("shared/terms/b/c/more.yml", TERM)
    assert "proof" in workshop.read().library.terms


def test_an_unreadable_folder(workshop: Workshop, monkeypatch: pytest.MonkeyPatch) -> None:
    scan = os.scandir

    def refuse(path: str) -> object:
        if str(path).endswith("terms"):
            raise PermissionError(13, "Permission denied", str(path))
        return scan(path)

    monkeypatch.setattr(os, "scandir", refuse)
    assert workshop.said() == (
        "shared/terms: the folder cannot be read: Permission denied\n    hint: check its owner and permissions"
    )


def test_an_unreadable_file(workshop: Workshop, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(path: Path) -> bytes:
        raise PermissionError(13, "Permission denied", str(path))

    monkeypatch.setattr(Path, "read_bytes", refuse)
    assert "shared/terms/terms.yml: the file cannot be read: Permission denied\n" in workshop.said()


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_what_is_no_plain_file(workshop: Workshop) -> None:
    os.mkfifo(workshop.folder / "shared/terms/pipe.yml")
    (workshop.folder / "shared/terms/gone.yml").symlink_to("nowhere.yml")
    assert workshop.said() == (
        "shared/terms/gone.yml: is not a plain file\n    hint: put a plain text file in its place\n"
        "shared/terms/pipe.yml: is not a plain file\n    hint: put a plain text file in its place"
    )
