"""A chart draws what the plan gives, and says so where that is nothing."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.model.picture import Chart
from generator.pipeline.figuring import figure
from generator.problems import ProblemsFound
from generator.telling.charts import draw_chart
from generator.telling.edition import Edition
from generator.telling.figures import Figures
from generator.telling.sentences import Sentences
from tests.product import product_edition, product_reading, product_workbook


def drawn(chart: Chart, edition: Edition) -> str:
    figures = Figures(edition)
    return draw_chart(chart, edition, figures, Sentences(edition, figures))


def chill_curve(edition: Edition) -> Chart:
    chart = edition.library.pictures["chill_curve"].chart
    assert chart
    return chart


def without(edition: Edition, name: str) -> Edition:
    """As if the plan refused that number."""
    values = {each: value for each, value in edition.day.values.items() if each != name}
    return replace(edition, day=replace(edition.day, values=values))


def test_a_span_of_nothing_gives_no_curve() -> None:
    name = next(iter(product_workbook().givens.inputs))
    chart = Chart(sweep=name, begins=name, ends=name, read=name, across="Across", up="Up", marks={})
    with pytest.raises(ProblemsFound) as found:
        drawn(chart, product_edition())
    assert str(found.value) == (
        f"pictures: `{name}` gives no curve over `{name}` with this plan\n    hint: see the values of the plan"
    )


def test_marks_that_the_plan_refuses_are_left_out() -> None:
    """A bath of 5 °C never brings a breast to 40 °F: there is no time after which it is cold."""
    warm = figure(product_reading(), product_workbook(), changes=["chill_water_temperature=5degC"])
    assert "chill_time" in warm.day.refused
    chart = chill_curve(warm)
    svg = drawn(chart, warm)
    kept = [mark.title for name, mark in chart.marks.items() if name != "cold"]
    assert len(kept) == 3
    assert [title for title in kept if f">{title}: " not in svg] == []
    assert f">{chart.marks['cold'].title}: " not in svg
    assert svg.count("<circle ") == len(kept)


@pytest.mark.parametrize("end", ["begins", "ends"])
def test_where_the_plan_refuses_an_end_the_chart_stays_empty(end: str) -> None:
    edition = product_edition()
    chart = chill_curve(edition).model_copy(update={end: "chill_time"})
    svg = drawn(chart, without(edition, "chill_time"))
    assert svg.count(">–</text>") == 4
    assert "<circle " not in svg
    assert 'stroke-width="4"' not in svg
    assert f">{chart.up}</text>" in svg


def test_where_the_plan_refuses_the_whole_curve_the_chart_stays_empty() -> None:
    warm = figure(product_reading(), product_workbook(), changes=["chill_water_temperature=5degC"])
    svg = drawn(chill_curve(warm).model_copy(update={"read": "chill_time"}), warm)
    assert svg.count(">–</text>") == 4
    assert "<circle " not in svg
