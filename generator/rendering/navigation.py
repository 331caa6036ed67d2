"""The menu: few entries, because every page of the site carries the whole of it."""

from __future__ import annotations

from collections.abc import Iterable

from generator.rendering.pages import Page


def navigation(made: Iterable[Page]) -> list[str]:
    """Files of the pages that stand in the menu; their titles are read from the pages themselves."""
    return [page.file for page in made if page.in_menu]
