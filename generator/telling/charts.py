"""Charts of how one quantity follows another, drawn from the numbers of the plan."""

from __future__ import annotations

from dataclasses import dataclass

from jinja2 import Environment, PackageLoader, StrictUndefined

from generator.model.picture import Chart, Mark
from generator.problems import Place, Problem, ProblemsFound
from generator.telling.edition import Edition
from generator.telling.figures import Figures
from generator.telling.sentences import Sentences

POINTS = 32
LEFT, RIGHT, TOP, BOTTOM = 88.0, 404.0, 34.0, 226.0
"""The edges of the plot in a drawing of 420 across."""
LINE = 22
"""From one line of words to the next."""


@dataclass(frozen=True)
class Scale:
    """Lays values on a line of the drawing."""

    low: float
    high: float
    start: float
    end: float

    def at(self, value: float) -> float:
        """Where a value stands, to a tenth."""
        share = (value - self.low) / ((self.high - self.low) or 1.0)
        return round(self.start + share * (self.end - self.start), 1)


def draw_chart(chart: Chart, edition: Edition, figures: Figures, say: Sentences) -> str:
    """The chart as SVG, with the colours by name. Raises ProblemsFound where the plan gives no curve."""
    values = {**edition.settings, **edition.day.values}
    begins = float(values[chart.begins]) if chart.begins else 0.0
    ends = float(values.get(chart.ends, begins))
    curve = _sweep(chart, edition, begins, ends)
    if len(curve) < 2 or ends <= begins:
        fault = f"`{chart.read}` gives no curve over `{chart.sweep}` with this plan"
        raise ProblemsFound([Problem(Place("pictures"), fault, "see the values of the plan")])
    across = Scale(begins, ends, LEFT, RIGHT)
    ups = [up for _, up in curve] + [float(values[mark.up]) for mark in chart.marks.values() if mark.up]
    up = Scale(min(ups), max(ups), BOTTOM - 8, TOP + 8)
    template = Environment(
        loader=PackageLoader("generator.telling"), autoescape=True, undefined=StrictUndefined, trim_blocks=True
    ).get_template("chart.svg.jinja")
    read, sweep = figures.items[chart.read], figures.items[chart.sweep]
    return template.render(
        curve=" L".join(f"{across.at(one)} {up.at(other)}" for one, other in curve),
        marks=[_mark(mark, values, across, up) for mark in chart.marks.values()],
        told=[_told(mark, figures, say) for mark in chart.marks.values()],
        ends={
            "left": figures.write(across.low, sweep, "first"),
            "right": figures.write(across.high, sweep, "first"),
            "low": figures.write(up.low, read, "first"),
            "high": figures.write(up.high, read, "first"),
        },
        across=say.plain(chart.across),
        up=say.plain(chart.up),
        plan=edition.plan,
        edge={"left": LEFT, "right": RIGHT, "top": TOP, "bottom": BOTTOM, "line": LINE},
    )


def _sweep(chart: Chart, edition: Edition, begins: float, ends: float) -> list[tuple[float, float]]:
    """Points of the curve; where the value is refused there is none."""
    found, wanted = [], edition.workbook.rests_on(chart.read)
    for step in range(POINTS + 1):
        one = begins + (ends - begins) * step / POINTS
        other = edition.workbook.compute({**edition.settings, chart.sweep: one}, wanted).values.get(chart.read)
        if isinstance(other, float):
            found.append((one, other))
    return found


def _mark(mark: Mark, values: dict[str, float | str], across: Scale, up: Scale) -> dict[str, object]:
    return {
        "x": across.at(float(values[mark.across])) if mark.across else None,
        "y": up.at(float(values[mark.up])) if mark.up else None,
        "limit": mark.limit,
    }


def _told(mark: Mark, figures: Figures, say: Sentences) -> str:
    values = [figures.text(name) for name in (mark.across, mark.up) if name]
    return f"{say.plain(mark.title)}: {', '.join(values)}"
