"""Charts of how one quantity follows another, drawn from the numbers of the plan."""

from __future__ import annotations

from dataclasses import dataclass

from jinja2 import Environment, PackageLoader, StrictUndefined

from generator.model.picture import Chart, Mark
from generator.problems import Place, Problem, ProblemsFound
from generator.telling.edition import Edition
from generator.telling.figures import NOTHING, Figures
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
    """The chart as SVG, with the colours by name. Marks that the plan refuses are left out, and the curve may be.

    Raises ProblemsFound where the plan leaves the curve no span.
    """
    values = {**edition.settings, **edition.day.values}
    low, high = _span(chart, values)
    curve = _sweep(chart, edition, low, high) if low < high else []
    marks = [mark for mark in chart.marks.values() if curve and all(name in values for name in _names(mark))]
    across = Scale(low, high, LEFT, RIGHT)
    ups = [up for _, up in curve] + [float(values[mark.up]) for mark in marks if mark.up]
    up = Scale(min(ups, default=0.0), max(ups, default=0.0), BOTTOM - 8, TOP + 8)
    template = Environment(
        loader=PackageLoader("generator.telling"), autoescape=True, undefined=StrictUndefined, trim_blocks=True
    ).get_template("chart.svg.jinja")
    read, sweep = figures.items[chart.read], figures.items[chart.sweep]
    ends = {"left": (across.low, sweep), "right": (across.high, sweep), "low": (up.low, read), "high": (up.high, read)}
    return template.render(
        curve=" L".join(f"{across.at(one)} {up.at(other)}" for one, other in curve),
        marks=[_mark(mark, values, across, up) for mark in marks],
        told=[f"{say.plain(mark.title)}: {', '.join(map(figures.text, _names(mark)))}" for mark in marks],
        ends={end: figures.write(*value, "first") if curve else NOTHING for end, value in ends.items()},
        across=say.plain(chart.across),
        up=say.plain(chart.up),
        plan=edition.plan,
        edge={"left": LEFT, "right": RIGHT, "top": TOP, "bottom": BOTTOM, "line": LINE},
    )


def _span(chart: Chart, values: dict[str, float | str]) -> tuple[float, float]:
    """From where to where the curve goes; nought to nought where the plan refuses an end of it."""
    ends = [name for name in (chart.begins, chart.ends) if name]
    if not all(name in values for name in ends):
        return 0.0, 0.0
    begin, end = [0.0, *(float(values[name]) for name in ends)][-2:]
    if end <= begin:
        fault = f"`{chart.read}` gives no curve over `{chart.sweep}` with this plan"
        raise ProblemsFound([Problem(Place("pictures"), fault, "see the values of the plan")])
    return begin, end


def _sweep(chart: Chart, edition: Edition, begins: float, ends: float) -> list[tuple[float, float]]:
    """Points of the curve; where the value is refused there is none, and of a single one no curve comes."""
    found, wanted = [], edition.workbook.rests_on(chart.read)
    for step in range(POINTS + 1):
        one = begins + (ends - begins) * step / POINTS
        other = edition.workbook.compute({**edition.settings, chart.sweep: one}, wanted).values.get(chart.read)
        if isinstance(other, float):
            found.append((one, other))
    return found if len(found) > 1 else []


def _names(mark: Mark) -> list[str]:
    return [name for name in (mark.across, mark.up) if name]


def _mark(mark: Mark, values: dict[str, float | str], across: Scale, up: Scale) -> dict[str, object]:
    return {
        "x": across.at(float(values[mark.across])) if mark.across else None,
        "y": up.at(float(values[mark.up])) if mark.up else None,
        "limit": mark.limit,
    }
