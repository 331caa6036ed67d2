"""What every page loads, as programs tell; that pages load it, and copies not again, is seen in browser/test_weight."""

from pathlib import Path

from generator.publishing.loaded import loaded_by_all


def test_imports_are_followed_and_what_comes_on_demand_is_not(tmp_path: Path) -> None:
    programs = {
        "main": 'import { tick } from "./ticks.js";\nconst later = () => import("./search.js");\n',
        "ticks": 'import {\n  words,\n} from "./words.js";\nexport { sound } from "./alarm.js";\n'
        '// import { no } from "./no.js";\n',
        "words": 'import { tick } from "./ticks.js";\n',
        "alarm": "export const sound = 1;\n",
        "search": "export const found = 2;\n",
    }
    (tmp_path / "phone").mkdir()
    for name, program in programs.items():
        (tmp_path / f"phone/{name}.js").write_text(program)
    assert loaded_by_all(tmp_path) == [
        "look/all.css",
        "phone/alarm.js",
        "phone/main.js",
        "phone/ticks.js",
        "phone/words.js",
    ]
