"""What formulas may name: the scope that content's quantities, choices, sets, functions and tables make."""

from __future__ import annotations

from generator.computing.items import Item
from generator.formula import Argument, Function, Measured, Scope, Table, Word
from generator.model.function import Argument as ArgumentEntry
from generator.model.library import Library
from generator.units import UnitBook


def make_scope(library: Library, items: dict[str, Item], book: UnitBook) -> Scope:
    """The scope of every formula but those of functions. Raises UnitFault for an unknown unit."""
    choices = {name: Word(frozenset(choice.options)) for name, choice in library.choices.items()}
    return Scope(
        book,
        values={**choices, **{name: item.kind for name, item in items.items()}},
        sets={name: tuple(entry.members) for name, entry in library.sets.items()},
        functions={name: _function(library, name, book) for name in library.functions},
        tables={name: _table(library, name, book) for name in library.tables},
    )


def kind_of_unit(unit: str, point: bool, book: UnitBook) -> Measured:
    """What a unit measures; thermometers' units are points by themselves."""
    return Measured(book.dimension(unit), point or book.reads_a_point(unit))


def _function(library: Library, name: str, book: UnitBook) -> Function:
    entry = library.functions[name]
    arguments = tuple(_argument(each, argument, book) for each, argument in entry.arguments.items())
    return Function(name, arguments, kind_of_unit(entry.unit, entry.point, book))


def _argument(name: str, entry: ArgumentEntry, book: UnitBook) -> Argument:
    if entry.number:
        book.size(entry.unit)
        return Argument(name, Measured(), entry.unit)
    return Argument(name, kind_of_unit(entry.unit, False, book))


def _table(library: Library, name: str, book: UnitBook) -> Table:
    entry = library.tables[name]
    axes = tuple(kind_of_unit(axis.unit, False, book) for axis in entry.axes.values())
    return Table(name, axes, kind_of_unit(entry.unit, entry.point, book))
