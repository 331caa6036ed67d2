"""A phone that was switched off: Firefox started again over the same profile, the host long gone."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.browser.host import Host
from tests.engines import firefox
from tests.engines.conftest import keep_offline, until, visit


@pytest.mark.skipif(bool(firefox.MISSING), reason=firefox.MISSING)
def test_a_cold_start_without_signal_has_the_site_and_the_ticks(host: Host, tmp_path: Path) -> None:
    first = firefox.Firefox(tmp_path / "profile")
    keep_offline(first, host)
    visit(first, host.address + "work/scald/")
    first.click(".step__tick")
    until(first, "document.querySelectorAll('.step--done').length === 1")
    first.close()

    again = firefox.Firefox(tmp_path / "profile")
    visit(again, host.address + "work/scald/")
    assert again.run("document.querySelectorAll('.step--done').length") == 1
    again.close()
