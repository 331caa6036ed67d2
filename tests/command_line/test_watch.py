import subprocess
import sys
from collections.abc import Iterator
from urllib.request import urlopen

import pytest

from generator.command_line import watch
from generator.pipeline.order import HERE, Order


@pytest.fixture
def watching(bakery: Order) -> Iterator[subprocess.Popen[str]]:
    words = ["watch", "--content", bakery.content, "--farm", bakery.farm, "--into", bakery.into, "--port", "18100"]
    program = [sys.executable, "-u", "-m", "generator.command_line", *map(str, words)]
    with subprocess.Popen(
        program, cwd=HERE, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, encoding="utf-8"
    ) as running:
        yield running
        running.kill()


def line_with(running: subprocess.Popen[str], text: str) -> str:
    """The next line that has the text; those about long steps are passed over."""
    assert running.stdout
    while text not in (line := running.stdout.readline()):
        assert line, f"it ended without {text!r}"
    return line


def test_a_change_is_built_a_fault_is_told_and_the_last_preview_stays(
    bakery: Order, watching: subprocess.Popen[str]
) -> None:
    line_with(watching, "built in ")
    address = line_with(watching, "The preview is at ").split()[4]
    steps = bakery.shared / "procedures/mix.yml"
    good = steps.read_text()

    def shown() -> str:
        with urlopen(address + "work/mix_the_dough/", timeout=5) as page:
            return str(page.read().decode())

    assert "Cover the bowl" in shown()
    steps.write_text(good.replace("Cover the bowl", "Cover it"))
    line_with(watching, "built in ")
    assert "Cover it" in shown()

    steps.write_text(good.replace("  purpose:", "  porpose:"))
    assert "mix.yml:7:3: unknown key `porpose`" in line_with(watching, "porpose")
    assert "Cover it" in shown()

    steps.write_text(good)
    line_with(watching, "built in ")
    assert "Cover the bowl" in shown()
    assert not (bakery.into / "site").exists()

    watching.send_signal(2)
    assert watching.wait(10) == 130
    assert watching.stdout and "Traceback" not in watching.stdout.read()


def test_a_file_that_an_editor_is_just_replacing_does_not_end_it(
    bakery: Order, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def gone(*_: object, **__: object) -> None:
        raise FileNotFoundError(2, "No such file or directory", "shared/terms/terms.yml")

    monkeypatch.setattr(watch, "build", gone)
    watch._try_to_build(bakery.preview)
    assert capsys.readouterr().err.splitlines() == [
        "shared/terms/terms.yml: no such file or directory",
        "    hint: see that it is there",
    ]
