"""Firefox over WebDriver BiDi, the open protocol that it speaks by itself, as far as these tests need it."""

from __future__ import annotations

import json
import shutil
import subprocess
import time
from pathlib import Path
from typing import Any

import websocket

BROWSER = shutil.which("firefox-esr") or shutil.which("firefox")
MISSING = "" if BROWSER else "needs Debian's firefox-esr, or another Firefox"
PORT_FILE = "WebDriverBiDiServer.json"
PREFERENCES = {
    "app.normandy.enabled": False,
    "app.update.enabled": False,
    "browser.shell.checkDefaultBrowser": False,
    "datareporting.policy.dataSubmissionEnabled": False,
    "dom.serviceWorkers.testing.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "toolkit.telemetry.reportingpolicy.firstRun": False,
}
_ANSWER = "Promise.resolve({0}).then((it) => JSON.stringify([it ?? null]))"


class Firefox:
    """A window of 390 by 844; what it stores stays in its profile folder, so that it can be started again."""

    def __init__(self, profile: Path) -> None:
        profile.mkdir(exist_ok=True)
        lines = [f"user_pref({json.dumps(name)}, {json.dumps(value)});" for name, value in PREFERENCES.items()]
        (profile / "user.js").write_text("\n".join(lines))
        (profile / PORT_FILE).unlink(missing_ok=True)
        words = [str(BROWSER), "--headless", "--no-remote", "--profile", str(profile), "--remote-debugging-port", "0"]
        self._process = subprocess.Popen(words, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        self._number = 0
        self._line = websocket.create_connection(f"{_address(profile)}/session", timeout=30, suppress_origin=True)
        self._ask("session.new", capabilities={})
        self._page = self._ask("browsingContext.getTree")["contexts"][0]["context"]
        self._ask("browsingContext.setViewport", context=self._page, viewport={"width": 390, "height": 844})

    def open(self, address: str) -> None:
        self._ask("browsingContext.navigate", context=self._page, url=address, wait="complete")

    def run(self, expression: str) -> Any:
        target = {"context": self._page}
        wanted = _ANSWER.replace("{0}", expression)
        answer = self._ask("script.evaluate", expression=wanted, target=target, awaitPromise=True)
        assert answer["type"] == "success", answer["exceptionDetails"]["text"]
        return json.loads(answer["result"]["value"])[0]

    def click(self, selector: str) -> None:
        place = {"type": "element", "element": self._find(selector)}
        steps = [
            {"type": "pointerMove", "x": 0, "y": 0, "origin": place},
            {"type": "pointerDown", "button": 0},
            {"type": "pointerUp", "button": 0},
        ]
        self._act({"type": "pointer", "id": "finger", "parameters": {"pointerType": "touch"}, "actions": steps})

    def type(self, selector: str, text: str) -> None:
        self.run(f"document.querySelector({json.dumps(selector)}).select()")
        keys = [{"type": kind, "value": letter} for letter in text for kind in ("keyDown", "keyUp")]
        self._act({"type": "key", "id": "keys", "actions": keys})

    def close(self) -> None:
        self._ask("browser.close")
        self._line.close()
        self._process.wait(20)

    def _find(self, selector: str) -> dict[str, str]:
        """The element, brought into view first: fingers only reach what is there."""
        show = f"(() => {{ const it = document.querySelector({json.dumps(selector)});"
        show += "it.scrollIntoView({block: 'center', behavior: 'instant'}); return it; })()"
        answer = self._ask("script.evaluate", expression=show, target={"context": self._page}, awaitPromise=False)
        return {"sharedId": answer["result"]["sharedId"]}

    def _act(self, source: dict[str, Any]) -> None:
        self._ask("input.performActions", context=self._page, actions=[source])

    def _ask(self, method: str, **parameters: object) -> Any:
        self._number += 1
        self._line.send(json.dumps({"id": self._number, "method": method, "params": parameters}))
        while (answer := json.loads(self._line.recv())).get("id") != self._number:
            pass
        assert answer["type"] == "success", answer
        return answer["result"]


def _address(profile: Path) -> str:
    """Where the browser listens: it writes that into its profile once it does."""
    file, end = profile / PORT_FILE, time.monotonic() + 30
    while not (file.is_file() and (told := file.read_text())):
        assert time.monotonic() < end, "Firefox did not start"
        time.sleep(0.05)
    found = json.loads(told)
    return f"ws://{found['ws_host']}:{found['ws_port']}"
