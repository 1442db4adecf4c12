"""Random cases for a calculator: what is typed, which units are chosen, and what Python makes of the same."""

import random
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from types import SimpleNamespace
from typing import Any

from generator.formulas import AnyInput, Choice, Formula, FormulaError, Input, Rows, Sizes
from generator.model import CalculatorSettings
from generator.sums import passed_limits
from generator.units import Quantity
from generator.units.pint_door import from_pint, to_pint
from generator.units.quantity import from_si
from tests.formulas.float_sums import RECORDS, in_si
from tests.outputs.random_givens import random_value

BLOCK = 20
# A cell as it is typed, and the unit chosen beside it first; None leaves the choice as it is.
Cell = tuple[str, str | None]


@dataclass(frozen=True)
class Case:
    """Values by name, the unit of the answer, and the same as a user enters them, box by box in order."""

    values: Mapping[str, Any]
    unit: str
    entries: tuple[Any, ...]
    used: frozenset[tuple[str, str]] = field(default=frozenset())

    def as_pint(self) -> dict[str, Any]:
        """The values as pint quantities."""
        return {name: _pint(value) for name, value in self.values.items()}

    def as_floats(self) -> SimpleNamespace:
        """The values as plain floats in SI, by unit factors that are not the library's."""
        return SimpleNamespace(**{name: _float(value) for name, value in self.values.items()})


def random_case(formula: Formula, dice: random.Random, turn: int) -> Case:
    """A case in which all units have their turn, every second time typed behind the number."""
    values = {each.name: _given(each, dice, turn) for each in formula.inputs}
    unit = _block_choice(formula.answer.all_units, "answer", turn)
    entries = tuple(_entry(each, values[each.name], turn) for each in formula.inputs)
    return Case(values, unit, entries, frozenset(_used(formula, values)))


def short_case(formula: Formula, dice: random.Random, rows: int) -> Case:
    """A case of four figures a number, each with its unit behind it, to be typed key by key."""
    values = {each.name: _short(each, _given(each, dice, BLOCK * rows + 1)) for each in formula.inputs}
    entries = tuple(_entry(each, values[each.name], turn=1) for each in formula.inputs)
    return Case(values, formula.answer.unit, entries)


def _short(each: AnyInput, value: Any) -> Any:
    if isinstance(value, Quantity):
        return Quantity(float(f"{value.number:.4g}"), value.unit)
    if isinstance(each, Rows):
        columns = {column.name: column for column in each.columns}
        return tuple({name: _short(columns[name], cell) for name, cell in row.items()} for row in value)
    return value


def _block_choice(units: tuple[str, ...], name: str, turn: int) -> str:
    """What is chosen in a list stays for some cases: a choice is dearer than a number."""
    return random.Random(f"{name} {turn // BLOCK}").choice(units)


def _given(each: AnyInput, dice: random.Random, turn: int) -> Any:
    match each:
        case Input(all_units=units):
            unit = dice.choice(units) if turn % 2 else _block_choice(units, each.name, turn)
            return Quantity(from_si(random_value(each, dice), unit), unit)
        case Rows():
            rows = range((turn // BLOCK) % 5)
            return tuple({c.name: _given(c, dice, turn) for c in each.columns} for _ in rows)
        case Sizes():
            return tuple(_size(each, dice) for _ in range(dice.randint(8, 30)))
        case Choice():
            return dice.choice(each.table.rows).name


def _size(each: Sizes, dice: random.Random) -> Quantity:
    return Quantity(float(f"{dice.uniform(0.05, 20):.2f}"), each.unit)


def _entry(each: AnyInput, value: Any, turn: int) -> Any:
    match each:
        case Input():
            return _typed(value, turn, each.clock)
        case Rows():
            return tuple(tuple(_typed(cell, turn, False) for cell in row.values()) for row in value)
        case Sizes():
            return " ".join(repr(size.number) for size in value)
        case Choice():
            return value


def _typed(value: Quantity, turn: int, clock: bool) -> Cell:
    number = repr(value.number)
    if clock or not value.unit:
        return number, None
    return (f"{number} {value.unit}", None) if turn % 2 else (number, value.unit)


def _used(formula: Formula, values: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    """Which unit each input, and each column of rows, is given in."""
    for each in formula.inputs:
        value = values[each.name]
        if isinstance(each, Input):
            yield each.name, value.unit
        elif isinstance(each, Rows):
            yield from ((name, cell.unit) for row in value for name, cell in row.items())
        elif isinstance(each, Choice):
            yield each.name, value


def all_choices(formula: Formula) -> frozenset[tuple[str, str]]:
    """Every unit and every row of a table that can be chosen in the form."""
    columns = [c for each in formula.inputs if isinstance(each, Rows) for c in each.columns]
    inputs = [each for each in (*formula.inputs, *columns) if isinstance(each, Input)]
    units = {(each.name, unit) for each in inputs for unit in each.all_units}
    choices = [each for each in formula.inputs if isinstance(each, Choice)]
    return frozenset(units | {(each.name, row.name) for each in choices for row in each.table.rows})


def answer_in_python(formula: Formula, case: Case, settings: CalculatorSettings | None) -> float | None:
    """The answer through pint in the case's unit, None where the formula or the lab refuses."""
    try:
        found = formula.evaluate(case.values)
    except FormulaError:
        return None
    if any(passed_limits(formula, case.values, found, settings)):
        return None
    # Pint knows no boards.
    answer = found if case.unit == "boards" else from_pint(formula.with_pint(**case.as_pint()), found.unit)
    return answer.to(case.unit).number


def _pint(value: Any) -> Any:
    if isinstance(value, Quantity):
        return to_pint(value)
    if isinstance(value, tuple) and value and isinstance(value[0], Mapping):
        return tuple({name: _pint(cell) for name, cell in row.items()} for row in value)
    return value


def _float(value: Any) -> Any:
    if isinstance(value, Quantity):
        return in_si(value.number, value.unit)
    if isinstance(value, str):
        return RECORDS[value]
    return tuple(
        SimpleNamespace(**{name: _float(cell) for name, cell in row.items()})
        if isinstance(row, Mapping)
        else _float(row)
        for row in value
    )
