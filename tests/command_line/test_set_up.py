"""What `run.py` says of a Python that cannot do it, before it makes anything."""

from importlib.util import find_spec

import pytest

import run as set_up


@pytest.mark.parametrize(("lacking", "named"), [(["_lzma"], "`lzma`"), (["_lzma", "_sqlite3"], "`lzma` and `sqlite3`")])
def test_a_python_without_a_part_of_its_library(
    lacking: list[str], named: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(set_up.importlib.util, "find_spec", lambda name: None if name in lacking else find_spec(name))
    with pytest.raises(SystemExit) as left:
        set_up.prepare("serve")
    assert left.value.code == (
        f"This Python was built without {named}: {set_up.sys.executable}\n"
        "Install a whole Python, as your system or python.org has it, and run this again with that one."
    )
