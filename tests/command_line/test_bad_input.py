"""What a slip of the pen, a broken file or a bad folder gets: place, fault and remedy, and never a traceback."""

import os
import socket
import subprocess
import sys
from pathlib import Path
from urllib.request import urlopen

import pytest

from generator.pipeline.order import HERE, Order

from .conftest import Run

MIX, QUANTITIES, TERMS = "shared/procedures/mix.yml", "shared/quantities/quantities.yml", "shared/terms/terms.yml"
ADD = ""
"""In place of an old text: the new one is added at the end of the file, which may be new."""
SLIPS: dict[str, tuple[str, str, str | bytes, str]] = {
    "unknown key": (MIX, "  purpose:", "  porpose:", f"{MIX}:7:3: unknown key `porpose`"),
    "unknown id": (MIX, "number: flour_mass", "number: flower_mass", f"{MIX}:21:15: unknown quantity `flower_mass`"),
    "duplicate key": (MIX, "  verb: Mix", "  verb: Mix\n  verb: Stir", f"{MIX}:4:3: key `verb` is written twice"),
    "missing source": (QUANTITIES, "  source: common practice\n", "", f"{QUANTITIES}:1:1: `loaves` lacks `source`"),
    "wrong unit": (QUANTITIES, "240 degC", "240 kg", f"{QUANTITIES}:82:12: `kg` does not fit “Temperature”"),
    "circle": (
        QUANTITIES,
        "formula: loaves *",
        "formula: water_mass / 1[kg] * loaves *",
        f"{QUANTITIES}:58:12: `flour_mass` needs itself: `flour_mass` → `water_mass` → `flour_mass`",
    ),
    "division by zero at a plan's values": (
        QUANTITIES,
        "ceil(loaves / oven_places)",
        "ceil(loaves / (loaves - 40[loaf]))",
        "bakery/plans/plans.yml:1:1: `oven_loads` cannot be computed on this plan",
    ),
    "plan out of range": (
        "bakery/plans/plans.yml",
        "loaves: 40 loaf",
        "loaves: 4000 loaf",
        "bakery/plans/plans.yml:4:13: `loaves` is 4000 loaves, out of its range",
    ),
    "tab": (TERMS, ADD, "\tmore: x\n", f"{TERMS}:2:1: a tab"),
    "empty file": ("shared/terms/empty.yml", ADD, "", "shared/terms/empty.yml: the file holds no entry"),
    "ten megabytes": (
        "shared/terms/large.yml",
        ADD,
        "# much\n" * 1_500_000,
        "shared/terms/large.yml: the file is 10.5 MB; the limit is 1 MB",
    ),
    "not UTF-8": (
        "shared/terms/old.yml",
        ADD,
        b"caf\xe9: {title: Coffee, says: Black.}",
        "shared/terms/old.yml:1: not UTF-8: byte 0xE9 at offset 3",
    ),
    "broken overlay": (
        "bakery/quantities/own.yml",
        ADD,
        "bake_tme:\n  default: 39 min\n",
        "bakery/quantities/own.yml:4:1: `bake_tme` lacks `title`\n    hint: did you mean `bake_time`?",
    ),
}


def slip_in(slip: str, content: Path) -> str:
    """Makes the slip and returns what must be told of it."""
    name, old, new, told = SLIPS[slip]
    file = content / name
    before = file.read_bytes() if file.exists() else b""
    assert old.encode() in before
    piece = new if isinstance(new, bytes) else new.encode()
    file.write_bytes(before.replace(old.encode(), piece, 1) if old else before + piece)
    return f"{content}/{told}"


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_is_told_with_its_place(slip: str, bakery: Order, run: Run) -> None:
    told = slip_in(slip, bakery.content)
    answer = run("check", "--content", bakery.content, "--farm", bakery.farm)
    assert answer.status == 1
    assert told in answer.err
    assert answer.out == ""


def test_several_slips_are_told_in_one_run(bakery: Order, run: Run) -> None:
    told = [slip_in(slip, bakery.content) for slip in ("tab", "empty file", "ten megabytes", "not UTF-8")]
    answer = run("check", "--content", bakery.content, "--farm", bakery.farm)
    assert answer.status == 1
    assert [line for line in told if line not in answer.err] == []
    assert answer.err.rstrip().endswith("4 problems.")


def test_a_build_leaves_the_last_good_site(built_bakery: Order, run: Run) -> None:
    bakery = built_bakery
    words = ["--content", bakery.content, "--farm", bakery.farm, "--into", bakery.into]
    before = (bakery.site / "index.html").read_bytes()
    told = slip_in("plan out of range", bakery.content)
    answer = run("build", *words)
    assert answer.status == 1
    assert told in answer.err
    assert (bakery.site / "index.html").read_bytes() == before


def test_a_farm_that_is_not_there(bakery: Order, run: Run) -> None:
    answer = run("check", "--content", bakery.content, "--farm", bakery.content / "nowhere")
    assert answer.status == 1
    assert f"{bakery.content}/nowhere: there is no such folder\n" in answer.err


def test_a_station_that_is_not_there(bakery: Order, run: Run) -> None:
    out = bakery.content / "cards"
    farm = ("--content", bakery.content, "--farm", bakery.content / "bakery")
    answer = run("cards", *farm, "--out", out, "--station", "mix_the_dow")
    assert answer.status == 1
    assert "--station: no paper `mix_the_dow`\n    hint: did you mean `mix_the_dough`?" in answer.err
    assert not out.exists()
    answer = run(
        "cards", *farm, "--out", out, "--station", "mix_the_dough", "--station", "bake_the_loaves", "--paper", "A4"
    )
    assert (answer.status, answer.err) == (0, "")
    assert sorted(path.name for path in out.iterdir()) == ["station_bake_the_loaves.pdf", "station_mix_the_dough.pdf"]


def test_a_folder_that_cannot_be_written(bakery: Order, run: Run, tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    answer = run("build", "--content", bakery.content, "--farm", bakery.farm, "--into", tmp_path / "file" / "build")
    assert answer.status == 1
    assert answer.err.splitlines()[-2:] == [
        f"{tmp_path}/file/build/papers: not a directory",
        "    hint: see that the folder can be written and has room",
    ]


def as_somebody_else(*words: str | Path) -> subprocess.CompletedProcess[str]:
    """Root may read and write anywhere, so the command runs without that where the tests run as root."""
    program = [sys.executable, "-m", "generator.command_line", *map(str, words)]
    if os.geteuid() == 0:
        program = ["setpriv", "--inh-caps=-all", "--bounding-set=-all", *program]
    return subprocess.run(program, cwd=HERE, capture_output=True, text=True, check=False)


PERMISSIONS = pytest.mark.skipif(os.name == "nt", reason="permissions are others there")


@PERMISSIONS
def test_a_folder_without_permission(bakery: Order, tmp_path: Path) -> None:
    locked = tmp_path / "locked"
    locked.mkdir(mode=0o500)
    words = ("--content", bakery.content, "--farm", bakery.farm, "--into", locked / "build")
    answer = as_somebody_else("build", *words)
    assert answer.returncode == 1
    assert answer.stderr.splitlines()[-2:] == [
        f"{locked}/build: permission denied",
        "    hint: see that the folder can be written and has room",
    ]


@PERMISSIONS
@pytest.mark.parametrize(
    ("command", "what"),
    [("check", "a file"), ("check", "a folder to look into"), ("check", "a folder to list"), ("build", "a file")],
)
def test_content_without_permission(bakery: Order, tmp_path: Path, command: str, what: str) -> None:
    terms = bakery.shared / "terms/terms.yml"
    locked, mode = (terms, 0) if what == "a file" else (terms.parent, 0o400 if what == "a folder to look into" else 0)
    locked.chmod(mode)
    into = ("--into", tmp_path / "build") if command == "build" else ()
    answer = as_somebody_else(command, "--content", bakery.content, "--farm", bakery.farm, *into)
    locked.chmod(0o700)
    told = f"{locked}: the folder" if what == "a folder to list" else f"{terms}: the file"
    assert answer.returncode == 1
    assert answer.stderr.splitlines()[-2:] == [
        f"{told} cannot be read: Permission denied",
        "    hint: check its owner and permissions",
    ]


def test_serve_moves_on_from_a_taken_port_and_stops_without_a_word(built_bakery: Order) -> None:
    bakery = built_bakery
    words = ["serve", "--content", bakery.content, "--farm", bakery.farm, "--into", bakery.into]
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        program = [sys.executable, "-m", "generator.command_line", *map(str, words), "--port", str(port)]
        with subprocess.Popen(program, cwd=HERE, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as serving:
            try:
                assert serving.stdout and serving.stderr
                address = serving.stdout.readline().split()[4]
                assert int(address.split(":")[2].split("/")[0]) > port
                with urlopen(address, timeout=10) as page:
                    assert b"Night Oven" in page.read()
                serving.send_signal(2)
                assert serving.wait(10) == 130
                assert "Traceback" not in serving.stderr.read()
            finally:
                serving.kill()


def test_a_second_serve_has_nothing_to_build(built_bakery: Order, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    bakery = built_bakery
    words = ["--content", bakery.content, "--farm", bakery.farm, "--into", bakery.into]
    monkeypatch.setattr("generator.publishing.serving.SiteServer.serve_forever", lambda self: None)
    monkeypatch.setattr("generator.pipeline.story.build", None)
    answer = run("serve", *words)
    assert answer.status == 0
    assert answer.out.startswith("The site is at http://127.0.0.1:")
