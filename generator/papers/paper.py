"""A paper before it is set: which template makes it, and from what."""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass

from generator.papers.data import Data
from generator.papers.wording import Wording
from generator.telling.alerts import stops
from generator.telling.listing import SIZES


@dataclass(frozen=True)
class Sheet:
    """One paper of one edition, for any size of paper unless it is bound to one."""

    id: str
    """Names its file: `station_<procedure>`, or the id of the paper in content."""
    title: str
    group: str
    """The heading under which it is listed."""
    form: str
    """The template, by name."""
    data: Data
    bound_to: str = ""
    """The only size it comes in, for sheets of label stock."""

    @property
    def code(self) -> str:
        """Changes with everything that stands on the paper, so that an old one is told from a new one."""
        text = json.dumps([self.form, self.title, self.data], sort_keys=True, ensure_ascii=False)
        return hashlib.sha256(text.encode()).hexdigest()[:6].upper()

    def sizes(self) -> tuple[str, ...]:
        """The sizes of paper it comes in."""
        return (self.bound_to,) if self.bound_to else SIZES


def set_up(sheet: Sheet, wording: Wording, size: str) -> Data:
    """All that a template is given: the sheet's own data, and what stands on every paper."""
    edition = wording.edition
    farm = edition.library.this_farm
    against = len(stops(edition))
    parts = (f"{wording.word('paper_version')} {edition.version}", edition.made_on, edition.plan, farm.name)
    return {
        **sheet.data,
        "id": sheet.id,
        "form": sheet.form,
        "title": sheet.title,
        "paper": size,
        "language": edition.language,
        "code": sheet.code,
        "not_ready": f"{wording.word('paper_not_ready')} {against}" if against else "",
        "foot": " · ".join(part for part in parts if part),
    }
