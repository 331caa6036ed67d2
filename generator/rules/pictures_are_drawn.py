"""Words about a drawing and the drawing itself come in pairs."""

from __future__ import annotations

from collections.abc import Iterator

from generator.rules.inspection import Finding, Inspection


def pictures_are_drawn(inspection: Inspection) -> Iterator[Finding]:
    """Every picture but a chart has a drawing named by its id in the folder of pictures."""
    for name, picture in inspection.library.pictures.items():
        if picture.chart is None and inspection.reading.file("pictures", f"{name}.svg") is None:
            hint = f"put the drawing into the folder of pictures as `{name}.svg`"
            yield Finding("pictures", name, (), f"picture `{name}` has no drawing", hint)
