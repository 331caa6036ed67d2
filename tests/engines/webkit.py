"""WebKitGTK's small browser over WebDriver: the engine nearest an iPhone's that a Linux machine can run."""

from __future__ import annotations

import os
import shutil
import subprocess
from contextlib import suppress
from pathlib import Path
from typing import Any

from selenium.common.exceptions import WebDriverException
from selenium.webdriver import Remote, WebKitGTKOptions
from selenium.webdriver.common.by import By
from selenium.webdriver.remote.client_config import ClientConfig
from selenium.webdriver.remote.remote_connection import RemoteConnection
from selenium.webdriver.webkitgtk.service import Service

DRIVER = shutil.which("WebKitWebDriver")
SCREEN = shutil.which("Xvfb")
BROWSER = next(iter(sorted(Path("/usr/lib").glob("*/webkit2gtk-4.1/MiniBrowser"))), None)
MISSING = "" if DRIVER and SCREEN and BROWSER else "needs Debian's webkit2gtk-driver and xvfb"
_AS_ROOT = {"WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS": "1", "WEBKIT_DISABLE_COMPOSITING_MODE": "1"}
_ANSWER = "const done = arguments[0]; Promise.resolve({0}).then((it) => done([it]), (fault) => done(String(fault)));"


class WebKit:
    """A window of 390 by 844, with a storage of its own that lasts as long as it."""

    def __init__(self) -> None:
        self._screen, display = _start_screen()
        options = WebKitGTKOptions()
        options.binary_location = str(BROWSER)
        options.add_argument("--automation")
        self._service = Service(DRIVER, env={**os.environ, **_AS_ROOT, "DISPLAY": display})
        self._service.start()
        line = RemoteConnection(client_config=ClientConfig(remote_server_addr=self._service.service_url))
        self._driver = Remote(command_executor=line, options=options)
        self._driver.set_script_timeout(20)
        self._driver.set_window_size(390, 844)

    def open(self, address: str) -> None:
        self._driver.get(address)

    def run(self, expression: str) -> Any:
        answer = self._driver.execute_async_script(_ANSWER.replace("{0}", expression))
        assert isinstance(answer, list), answer
        return answer[0]

    def click(self, selector: str) -> None:
        element = self._driver.find_element(By.CSS_SELECTOR, selector)
        # By itself the driver may leave it under the bar at the foot, where no finger would reach it either.
        self._driver.execute_script("arguments[0].scrollIntoView({block: 'center', behavior: 'instant'})", element)
        element.click()

    def type(self, selector: str, text: str) -> None:
        field = self._driver.find_element(By.CSS_SELECTOR, selector)
        field.clear()
        field.send_keys(text)

    def picture(self, path: str) -> None:
        self._driver.save_screenshot(path)

    def close(self) -> None:
        with suppress(WebDriverException):
            self._driver.quit()
        self._service.stop()
        self._screen.terminate()
        self._screen.wait()


def _start_screen() -> tuple[subprocess.Popen[bytes], str]:
    """A screen nobody looks at, with whichever number is free."""
    reading, writing = os.pipe()
    words = [str(SCREEN), "-displayfd", str(writing), "-screen", "0", "800x1000x24", "-nolisten", "tcp"]
    screen = subprocess.Popen(words, pass_fds=[writing], stderr=subprocess.DEVNULL)
    os.close(writing)
    with os.fdopen(reading) as told:
        return screen, f":{told.readline().strip()}"
