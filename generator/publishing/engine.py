"""Runs MkDocs over written pages. Everything that is peculiar to MkDocs stays in here."""

from __future__ import annotations

import logging
import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import Any

from jinja2 import Environment

from generator.problems import Place, Problem, ProblemsFound
from generator.rendering.compiled import CompiledTemplates


def run_engine(
    settings_file: Path,
    docs: Path,
    site: Path,
    settings: Mapping[str, Any],
    made: datetime,
    memory: Path | None = None,
) -> None:
    """Turns the Markdown in `docs` into HTML in `site`; `settings` go over the file's, `made` dates the site map.

    The theme's templates are compiled once a process, and once for all where a folder for the `memory` of it is given.
    Raises ProblemsFound with every warning: a link that leads nowhere is a fault of ours or of the content.
    """
    os.environ["NO_MKDOCS_2_WARNING"] = "1"
    os.environ["SOURCE_DATE_EPOCH"] = str(int(made.timestamp()))
    from mkdocs.commands.build import build  # reads the environment while it is imported
    from mkdocs.config import load_config
    from mkdocs.exceptions import MkDocsException

    with _warnings() as heard:
        try:
            config = load_config(str(settings_file), docs_dir=str(docs), site_dir=str(site), **dict(settings))
            config.plugins.events["env"].append(partial(_recall_templates, CompiledTemplates(memory, "the theme's")))
            config.plugins.on_startup(command="build", dirty=False)
            build(config)
            config.plugins.on_shutdown()
        except MkDocsException as fault:
            heard.append(str(fault) or type(fault).__name__)
    if heard:
        raise ProblemsFound(Problem(Place("pages"), line, "see the page it names") for line in heard)


def _recall_templates(compiled: CompiledTemplates, env: Environment, **_: object) -> Environment:
    env.bytecode_cache = compiled
    return env


class _Listener(logging.Handler):
    def __init__(self, heard: list[str]) -> None:
        super().__init__(logging.WARNING)
        self.heard = heard

    def emit(self, record: logging.LogRecord) -> None:
        self.heard.append(record.getMessage())


@contextmanager
def _warnings() -> Iterator[list[str]]:
    heard: list[str] = []
    listener, logger = _Listener(heard), logging.getLogger("mkdocs")
    logger.addHandler(listener)
    logger.propagate = False
    try:
        yield heard
    finally:
        logger.removeHandler(listener)
