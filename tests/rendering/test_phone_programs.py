"""Programs that the build makes, against what the check of types is told of them."""

import re

from generator.pipeline.order import HERE
from generator.rendering import Rendered

DECLARED = HERE / "tests/structure/javascript/built"


def exported(program: str) -> set[str]:
    listed = re.findall(r"^export \{ (.*) \};", program, re.MULTILINE)
    single = re.findall(r"^export (?:const|function) (\w+)", program, re.MULTILINE)
    return {*single, *(name for names in listed for name in names.split(", "))}


def test_each_program_exports_what_is_declared(rendered: Rendered) -> None:
    made = {path[6:-3]: exported(text) for path, text in rendered.files.items() if re.fullmatch(r"phone/\w+\.js", path)}
    declared = {file.name[:-5]: exported(file.read_text(encoding="utf-8")) for file in DECLARED.glob("*.d.ts")}
    assert made == declared
    assert {"settle", "tables", "inputs"} <= made["formulas"]
