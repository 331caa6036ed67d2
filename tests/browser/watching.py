"""Waits for what a page should come to, and writes down what it should not do."""

from __future__ import annotations

import time
from collections.abc import Callable
from dataclasses import dataclass, field

from playwright.sync_api import BrowserContext, Error, Page

READY = "document.documentElement.dataset.ready !== undefined"
"""Every program of the page listens."""


@dataclass
class Noises:
    """What pages did that they should not. Read it at the end of a test."""

    foreign: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)


def listen(context: BrowserContext, noises: Noises) -> None:
    """Writes down requests to other hosts, uncaught errors, and errors on the console (policy violations are such)."""

    def on_request(request: object) -> None:
        address = str(getattr(request, "url", ""))
        if not address.startswith(("http://127.0.0.1:", "data:", "blob:")):
            noises.foreign.append(address)

    context.on("request", on_request)
    context.on("weberror", lambda error: noises.errors.append(str(error.error)))
    context.on("console", lambda line: noises.errors.append(line.text) if line.type == "error" else None)


def until(page: Page, script: str, seconds: float = 10, on_each: Callable[[], None] | None = None) -> object:
    """The first truthy answer of a script of the page, or of the page that takes its place; fails after `seconds`."""
    end = time.monotonic() + seconds
    while not (answer := _answer(page, script)):
        assert time.monotonic() < end, f"never true: {script}"
        if on_each:
            on_each()
        time.sleep(0.02)
    return answer


def _answer(page: Page, script: str) -> object:
    try:
        return page.evaluate(script)
    except Error as fault:
        if "because of a navigation" in str(fault):
            return None
        raise


def offline_ready(page: Page) -> None:
    """Waits until the worker has the whole site and is in charge of the page."""
    until(page, "Boolean(navigator.serviceWorker.controller)", 30)


def unfold_all(page: Page) -> None:
    """Opens every fold, and waits for what they held back."""
    page.evaluate("document.querySelectorAll('details').forEach((it) => { it.open = true; })")
    until(page, "document.querySelector('template[data-held]') === null")
