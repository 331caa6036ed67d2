"""A chart draws what the plan gives, and says so where that is nothing."""

from __future__ import annotations

import pytest

from generator.model.picture import Chart
from generator.problems import ProblemsFound
from generator.telling.charts import draw_chart
from generator.telling.figures import Figures
from generator.telling.sentences import Sentences
from tests.product import product_edition


def test_a_span_of_nothing_gives_no_curve() -> None:
    edition = product_edition()
    name = next(iter(edition.workbook.givens.inputs))
    figures = Figures(edition)
    chart = Chart(sweep=name, begins=name, ends=name, read=name, across="Across", up="Up", marks={})
    with pytest.raises(ProblemsFound) as found:
        draw_chart(chart, edition, figures, Sentences(edition, figures))
    assert str(found.value) == (
        f"pictures: `{name}` gives no curve over `{name}` with this plan\n    hint: see the values of the plan"
    )
