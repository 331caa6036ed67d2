"""Tables that formulas read between the points."""

from __future__ import annotations

import itertools
from typing import Annotated

from pydantic import Discriminator, Tag, model_validator

from generator.model.entry import Entry, Identifier, Title, UnitText, fault
from generator.model.source import Citations


class Axis(Entry):
    """One side of a table, in rising order."""

    title: Title
    unit: UnitText
    points: tuple[float, ...]

    @model_validator(mode="after")
    def _rising(self) -> Axis:
        if len(self.points) < 2:
            raise fault("needs two points or more", "a table is read between its points")
        for left, right in itertools.pairwise(self.points):
            if not left < right:
                raise fault(
                    f"has points that do not rise: {right:g} follows {left:g}", "put the points in rising order"
                )
        return self


Row = tuple[float, ...]


def _rows(values: object) -> str:
    """Which shape is meant: told by the first of the values, so that a slip further on is reported where it is."""
    return "rows" if isinstance(values, tuple) and values and isinstance(values[0], tuple) else "row"


class Table(Entry):
    """Values over one or two axes, read between the points by straight lines."""

    title: Title
    axes: dict[Identifier, Axis]
    unit: UnitText
    point: bool = False
    values: Annotated[Annotated[Row, Tag("row")] | Annotated[tuple[Row, ...], Tag("rows")], Discriminator(_rows)]
    """One axis: one number a point. Two axes: one row a point of the first axis."""
    hold_ends: bool = False
    """Outside the table the nearest end is used when true; when false the value is refused by name."""
    source: Citations

    @model_validator(mode="after")
    def _values_fit_axes(self) -> Table:
        lengths = [len(axis.points) for axis in self.axes.values()]
        if not 1 <= len(lengths) <= 2:
            raise fault(f"has {len(lengths)} axes", "a table has one axis or two")
        rows = [row for row in self.values if isinstance(row, tuple)]
        if len(self.values) != lengths[0] or (len(lengths) == 2) != bool(rows):
            raise fault(
                f"has `values` that are not {_expected(lengths)}", "count the values against the points of the axes"
            )
        for number, row in enumerate(rows, 1):
            if len(row) != lengths[1]:
                raise fault(f"has {len(row)} numbers in row {number} of `values`, not {lengths[1]}", "count them again")
        return self


def _expected(lengths: list[int]) -> str:
    return f"{lengths[0]} numbers" if len(lengths) == 1 else f"{lengths[0]} rows of {lengths[1]} numbers"
