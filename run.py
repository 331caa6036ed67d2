#!/usr/bin/env python3
"""Sets up a private environment, then does what was asked. Needs only Python 3.11 or newer: `python3 run.py --help`."""

from __future__ import annotations

import ctypes.util
import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).resolve().parent
ENVIRONMENT = HERE / ".environment"
PYTHON = ENVIRONMENT / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
ALL_CORES = ("-n", "auto", "--dist", "loadscope", "--no-loadscope-reorder")
WINDOWLESS = "chromium-headless-shell"
"""Debian's Chromium without its windows: the same pages in half the time."""
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "microsoft-edge", "msedge", "chrome")


def main() -> int:
    """Read what is wanted, see that its packages are there, and hand over."""
    if sys.version_info < (3, 11):
        sys.exit(f"Python 3.11 or newer is needed; this is {sys.version.split()[0]}.")
    from generator.command_line.options import read_options  # only now: older Pythons cannot read it

    options = read_options(sys.argv[1:])
    testing = options.command == "test"
    prepare("test" if testing else "serve")
    if not testing:
        return hand_over("-m", "generator.command_line", *sys.argv[1:])
    find_browser()
    os.chdir(HERE)
    some = any(Path(word.split("::")[0]).exists() for word in options.rest)
    return hand_over("-m", "pytest", *(() if some else ALL_CORES), *options.rest)


def prepare(purpose: str) -> None:
    """Make the environment anew where its lock or its Python changed; add the test packages when first asked for."""
    need_whole_python()
    stamp = ENVIRONMENT / "installed"
    have = set(stamp.read_text().split()) if stamp.exists() and PYTHON.exists() else set()
    if fingerprint(purpose) in have:
        return
    if fingerprint("serve") not in have:
        say("Making a private environment in .environment (once; about a minute) ...")
        shutil.rmtree(ENVIRONMENT, ignore_errors=True)
        need_venv()
        call(sys.executable, "-m", "venv", str(ENVIRONMENT))
        have = set()
    else:
        say("Adding the packages that the tests need (once; about a minute) ...")
    lock = HERE / "requirements" / f"{purpose}.lock"
    pip = (str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--only-binary", ":all:")
    call(*pip, "--require-hashes", "--requirement", str(lock))
    stamp.write_text("\n".join(sorted({*have, fingerprint("serve"), fingerprint(purpose)})))


def fingerprint(purpose: str) -> str:
    """Names the packages of a purpose and the Python they are for."""
    lock = (HERE / "requirements" / f"{purpose}.lock").read_bytes().replace(b"\r\n", b"\n")
    return hashlib.sha256(lock + sys.version.encode()).hexdigest()


def need_whole_python() -> None:
    """A Python that was built where a library lacked does without the part that needs it."""
    lacking = [part for part in ("lzma", "sqlite3") if not importlib.util.find_spec(f"_{part}")]
    if lacking:
        sys.exit(
            f"This Python was built without {' and '.join(f'`{part}`' for part in lacking)}: {sys.executable}\n"
            "Install a whole Python, as your system or python.org has it, and run this again with that one."
        )


def need_venv() -> None:
    """Debian ships Python without the parts that make environments."""
    if importlib.util.find_spec("venv") and importlib.util.find_spec("ensurepip"):
        return
    install_debian("python3-venv") or sys.exit(
        "Python's `venv` is missing. Install it with\n    sudo apt-get install -y python3-venv\nand run this again."
    )


def find_browser() -> None:
    """See that the tests have a browser and what drives it: Debian's, else one that is there, else Playwright's."""
    if sys.platform == "linux" and not ctypes.util.find_library("atomic"):
        install_debian("libatomic1")  # Playwright brings a Node that is linked with it, and a bare Debian is without
    if shutil.which(WINDOWLESS) or install_debian(WINDOWLESS, "fonts-liberation") or any(map(shutil.which, BROWSERS)):
        return
    if subprocess.call([PYTHON, "-m", "playwright", "install", "chromium"]):
        say("Playwright could not bring a browser; tests that need one look for an installed Chrome or Edge.")


def install_debian(*packages: str) -> bool:
    """Install Debian packages where this is allowed, and tell whether it went well."""
    if not shutil.which("apt-get") or os.geteuid() != 0:
        return False
    say(f"Installing {' and '.join(packages)} ...")
    quiet = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    install = ["apt-get", "install", "-y", "-qq", "--no-install-recommends", *packages]
    steps = (["apt-get", "update", "-qq"], install)
    return all(subprocess.call(step, env=quiet, stdout=subprocess.DEVNULL) == 0 for step in steps)


def call(*words: str) -> None:
    """Run a step of the set-up; leave no half-made environment to be trusted later."""
    if subprocess.call(words):
        sys.exit(f"The set-up stopped at `{' '.join(words)}`.\nMend what it says above and run this again.")


def hand_over(*words: str) -> int:
    """Let the environment's Python take this process's place, so that Ctrl-C and exit codes are its own."""
    os.environ["PYTHONPATH"] = str(HERE)
    os.environ["PYTHONUTF8"] = "1"  # what is told holds signs that a pipe's own encoding may lack
    os.environ.pop("PYTHONDONTWRITEBYTECODE", None)  # as containers set it: every command would read its program anew
    if os.name != "nt":
        os.execv(PYTHON, [str(PYTHON), *words])
    try:
        return subprocess.call([PYTHON, *words])
    except KeyboardInterrupt:
        return 130


def say(text: str) -> None:
    """Tell on the error stream, so that `numbers --json` stays clean."""
    print(text, file=sys.stderr, flush=True)


if __name__ == "__main__":
    sys.exit(main())
