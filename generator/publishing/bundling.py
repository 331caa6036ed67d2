"""Joins the phone's modules into one plain script, for pages opened from a disk: there browsers refuse modules."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from pathlib import Path

_INLINE_COMMENT = re.compile(r"/\*\*(?:[^*\n]|\*(?!/))*\*/")
_IMPORT = re.compile(r'^import \{(?P<names>[^}]*)\} from "\./(?P<module>\w+)\.js";', re.MULTILINE)
_PASSED_ON = re.compile(r'^export \{(?P<names>[^}]*)\} from "\./(?P<module>\w+)\.js";', re.MULTILINE)
_LISTED = re.compile(r"^export \{(?P<names>[^}]*)\};", re.MULTILINE)
_TAKEN_APART = re.compile(r"^export const \{(?P<names>[^}]*)\} =", re.MULTILINE)
_DECLARED = re.compile(r"^export (?=(?:async )?(?:function\*?|const|class) (?P<name>\w+))", re.MULTILINE)
_LEFT_OVER = re.compile(r"^(?:import|export)\b|import\.meta", re.MULTILINE)
_FRAME = """"use strict";
(() => {
const site = new URL("../", document.currentScript.src);
const data = %s;
const fetch = async (address) => ({ json: async () => data[address.href.slice(site.href.length)] });
const made = {};
const out = {};
const use = (name) => (made[name] ??= modules[name]());
const begun = (name) => {
  if (!out[name]) use(name);
  return out[name];
};
const modules = {
%s
};
document.addEventListener("click", (event) => {
  const link = event.target.closest?.("a[href]");
  if (!link || link.protocol !== "file:" || !link.pathname.endsWith("/") || link.origin !== location.origin) return;
  event.preventDefault();
  location.assign(link.pathname + "index.html" + link.hash);
});
use("main");
})();
"""
"""A folder's address shows its list of files on a disk, so links go to the page in it."""


def bundle(programs: Path, data: Mapping[str, Path]) -> str:
    """All modules of a folder as one script that begins with `main`; `data` are JSON files that they would fetch."""
    texts = {
        file.stem: _INLINE_COMMENT.sub("", file.read_text(encoding="utf-8")) for file in sorted(programs.glob("*.js"))
    }
    circles = _circles({name: [found["module"] for found in _IMPORT.finditer(text)] for name, text in texts.items()})
    modules = [_module(name, text, circles) for name, text in texts.items()]
    held = {name: json.loads(file.read_text(encoding="utf-8")) for name, file in data.items()}
    return _FRAME % (json.dumps(held), ",\n".join(modules))


def _circles(imports: Mapping[str, list[str]]) -> set[tuple[str, str]]:
    """The imports that close a circle: waiting for such a module would be waiting for oneself."""
    found: set[tuple[str, str]] = set()
    done: set[str] = set()

    def follow(name: str, above: tuple[str, ...]) -> None:
        for other in imports[name]:
            if other in (*above, name):
                found.add((name, other))
            elif other not in done:
                follow(other, (*above, name))
        done.add(name)

    for name in imports:
        if name not in done:
            follow(name, ())
    return found


def _module(name: str, text: str, circles: set[tuple[str, str]]) -> str:
    """One module as a function that fills what it exports. Raises ValueError for imports and exports of other forms."""
    exported = [found["name"] for found in _DECLARED.finditer(text)]
    for pattern in (_LISTED, _TAKEN_APART):
        exported += [each for found in pattern.finditer(text) for each in _names(found["names"])]

    def taken(found: re.Match[str]) -> str:
        module = found["module"]
        made = f'begun("{module}")' if (name, module) in circles else f'await use("{module}")'
        return f"const {{ {_renamed(found['names'])} }} = {made};"

    text = _PASSED_ON.sub(
        rf'{{ const {{\g<names>}} = await use("\g<module>"); Object.assign(out.{name}, {{\g<names>}}); }}', text
    )
    text = _IMPORT.sub(taken, _LISTED.sub("", text))
    text = _DECLARED.sub("", re.sub(r"^export (?=const \{)", "", text, flags=re.MULTILINE))
    text = re.sub(r'\bimport\((["`])\./([^"`]+)\.js\1\)', r"use(\1\2\1)", text)
    text = text.replace("import.meta.url", f'new URL("phone/{name}.js", site).href')
    if left := _LEFT_OVER.search(text):
        raise ValueError(f"{name}.js: {text[left.start() :].splitlines()[0]}")
    getters = ", ".join(f"get {each}() {{ return {each}; }}" for each in exported)
    return f"async {name}() {{\nout.{name} = {{ {getters} }};\n{text}\nreturn out.{name};\n}}"


def _names(listed: str) -> list[str]:
    return [name.strip() for name in listed.split(",") if name.strip()]


def _renamed(listed: str) -> str:
    """Names as they are taken out of an object: `a as b` is written `a: b` there."""
    return ", ".join(re.sub(r"\s+as\s+", ": ", name) for name in _names(listed))
