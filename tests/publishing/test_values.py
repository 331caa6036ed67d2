"""Values that are named in a sheet and read by nothing."""

import pytest

from generator.publishing.values import without_unread


@pytest.mark.parametrize(
    ("sheet", "kept"),
    [
        ("p{--a:1;color:red}", "p{color:red}"),
        ("p{--a:1;color:var(--a)}", "p{--a:1;color:var(--a)}"),
        ("p{--a:1}b{width:calc(2 * var( --a, 3px))}", "p{--a:1}b{width:calc(2 * var( --a, 3px))}"),
        (":root{--a:var(--b);--b:1}b{c:d}", "b{c:d}"),
        (":root{--a:var(--b);--b:1}b{c:var(--a)}", ":root{--a:var(--b);--b:1}b{c:var(--a)}"),
        (":root{--a:var(--b);--b:var(--a)}", ""),
        ("@media print{:root{--a:1}b{c:d}}", "@media print{b{c:d}}"),
        (""":root{--a:url("data:x;y,<p d='M1 2z'/>");--own:2}b{c:var(--own)}""", ":root{--own:2}b{c:var(--own)}"),
        (".block--open{c:d}a{c:d}", ".block--open{c:d}a{c:d}"),
        ("b{--set:1;--drawn:2;--lent:3;--idle:4}", "b{--set:1;--drawn:2;--lent:3}"),
    ],
)
def test_only_what_is_read_stays(sheet: str, kept: str) -> None:
    program = 'element.style.setProperty("--set", 2)'
    assert without_unread(sheet, ["i{c:var(--lent)}"], ['<path fill="var(--drawn)"/>'], [program]) == kept
