"""The icon in the sizes that phones ask for, from one drawing."""

from __future__ import annotations

from pathlib import Path

from resvg_py import svg_to_bytes

SIZES = (48, 180, 192, 512)
BACKGROUND = "#0b2a33"
DRAWING = "icon.svg"
_MASKABLE = 512
_SAFE_SHARE = 0.8
"""A phone may cut a maskable icon to any shape, but never inside a circle of this share of its width."""


def draw_icons(site: Path) -> None:
    """Writes `icons/<size>.png` and `icons/maskable.png`; the drawing itself goes out of the site."""
    drawing = site / DRAWING
    svg = drawing.read_text(encoding="utf-8")
    folder = site / "icons"
    folder.mkdir(exist_ok=True)
    for size in SIZES:
        (folder / f"{size}.png").write_bytes(_draw(svg, size))
    (folder / "maskable.png").write_bytes(_draw(_shrink(svg), _MASKABLE))
    drawing.unlink()


def _draw(svg: str, size: int) -> bytes:
    return bytes(svg_to_bytes(svg_string=svg, width=size, height=size))


def _shrink(svg: str) -> str:
    """The drawing inside the safe circle, on its own background to the edges."""
    edge, size = 50 * (1 - _SAFE_SHARE), 100 * _SAFE_SHARE
    frame = f'<svg x="{edge:g}%" y="{edge:g}%" width="{size:g}%" height="{size:g}%"'
    inner = svg[svg.index("<svg") :].replace("<svg", frame, 1)
    back = f'<rect width="512" height="512" fill="{BACKGROUND}"/>'
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512">{back}{inner}</svg>'
