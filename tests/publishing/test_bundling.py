"""Modules joined into one script do what they did as modules; here run without a browser's module loader."""

from pathlib import Path
from typing import Any

import pytest
from py_mini_racer import MiniRacer

from generator.publishing.bundling import bundle
from generator.publishing.disk import as_file

SITE = """
class URL { constructor(path, base) { this.href = String(base?.href ?? "") + path; } }
var document = { currentScript: { src: "" }, addEventListener() {} };
var told = [];
"""


def _run(folder: Path, **modules: str) -> Any:
    for name, text in modules.items():
        (folder / f"{name}.js").write_text(text)
    engine = MiniRacer()
    engine.eval(SITE + bundle(folder, {}))
    return engine.eval("told.join(' ')")


def test_names_pass_from_module_to_module(tmp_path: Path) -> None:
    told = _run(
        tmp_path,
        main='import { one, two as second, Third } from "./other.js";\nimport {\n  passed,\n} from "./between.js";\n'
        'told.push(one(), second, new Third().name, passed);\nimport("./late.js").then(({ late }) => told.push(late));',
        other="export function one() { return 1; }\nexport const two = 2;\nexport class Third { name = 3; }\n"
        "const four = 4;\nexport { four };\nexport const { max } = Math;\n",
        between='export { passed } from "./deep.js";\n',
        deep="export const passed = 5;\n",
        late="export const late = 6;\n",
    )
    assert told == "1 2 3 5 6"


def test_modules_that_need_each_other_do_not_wait_for_ever(tmp_path: Path) -> None:
    told = _run(
        tmp_path,
        main='import { even } from "./even.js";\ntold.push(even(4), even(3));',
        even='import { odd } from "./odd.js";\nexport function even(n) { return n === 0 || odd(n - 1); }',
        odd='import { even } from "./even.js";\nexport function odd(n) { return n !== 0 && even(n - 1); }',
    )
    assert told == "true false"


@pytest.mark.parametrize("line", ['import * as all from "./a.js";', "export default 1;", "export let a = 1;"])
def test_what_it_cannot_join_is_named(tmp_path: Path, line: str) -> None:
    (tmp_path / "main.js").write_text(f"{line}\n")
    with pytest.raises(ValueError, match=r"main\.js: (?:import|export)"):
        bundle(tmp_path, {})


@pytest.mark.parametrize(
    ("written", "as_a_file"),
    [
        ('<a href="../../log/">', '<a href="../../log/index.html">'),
        ('<a href="../../log/#timers">', '<a href="../../log/index.html#timers">'),
        ('<a href="../..">', '<a href="../../index.html">'),
        ('<a href="./">', '<a href="./index.html">'),
        ('<a href="#top">', '<a href="#top">'),
        ('<a href="../papers/en/a4/pack.pdf">', '<a href="../papers/en/a4/pack.pdf">'),
        ('<a href="https://example.org/">', '<a href="https://example.org/">'),
        ('<script data-programs="../phone/main.js">', '<script src="../phone/whole.js" defer></script><script>'),
        ('<meta http-equiv="Content-Security-Policy" content="x">', ""),
    ],
)
def test_a_page_as_a_file(written: str, as_a_file: str) -> None:
    assert as_file(written) == as_a_file
