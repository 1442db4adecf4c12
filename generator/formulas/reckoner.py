"""A ready-reckoner: a formula's answers over the usual range of one or two of its inputs."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from generator.formulas.errors import FormulaError
from generator.formulas.formula import Formula
from generator.formulas.inputs import Input
from generator.formulas.settling import Value
from generator.units import Quantity, Window

_STEPS = (1.0, 2.0, 2.5, 5.0, 10.0)


@dataclass(frozen=True, slots=True)
class Reckoner:
    """Rows go down with one input, columns across with another; a cell that cannot be is None.

    `columns` is empty for a formula of one input: each row then has one cell.
    """

    formula: str
    down: Input
    across: Input | None
    rows: tuple[Quantity, ...]
    columns: tuple[Quantity, ...]
    cells: tuple[tuple[Quantity | None, ...], ...]


def round_values(window: Window, most: int = 8) -> tuple[Quantity, ...]:
    """Round numbers from the low to the high side of a closed window, `most` of them or fewer."""
    if window.low is None or window.high is None:
        raise ValueError("a window that is open has no steps")
    unit = window.high.unit
    low, high = window.low.to(unit).number, window.high.number
    if high <= low:
        return (window.high,)
    step = _step((high - low) / max(most - 1, 1))
    decimals = max(0, -math.floor(math.log10(step) + 1e-9) + (1 if _is_quarter(step) else 0))
    first = math.ceil(low / step - 1e-9)
    last = math.floor(high / step + 1e-9)
    return tuple(Quantity(round(n * step, decimals), unit, decimals) for n in range(first, last + 1))


def _step(least: float) -> float:
    power = 10.0 ** math.floor(math.log10(least))
    return next(step * power for step in _STEPS if step * power >= least * (1 - 1e-9))


def _is_quarter(step: float) -> bool:
    return abs(step / 10.0 ** math.floor(math.log10(step) + 1e-9) - 2.5) < 1e-6


def reckon(
    formula: Formula,
    down: str,
    across: str = "",
    values: Mapping[str, Value] | None = None,
    rows: Sequence[Quantity] = (),
    columns: Sequence[Quantity] = (),
) -> Reckoner:
    """The table over `rows` and `columns`, or else over round values of the usual ranges.

    `values` gives the other inputs. FormulaError for a name that is no single quantity of the formula.
    """
    first = _quantity(formula, down)
    second = _quantity(formula, across) if across else None
    row_values = tuple(rows) or _usual(formula, first)
    column_values = (tuple(columns) or _usual(formula, second)) if second else ()
    cells = tuple(
        tuple(
            _cell(formula, {**(values or {}), down: row, **({across: column} if column else {})})
            for column in column_values or (None,)
        )
        for row in row_values
    )
    return Reckoner(formula.name, first, second, row_values, column_values, cells)


def _quantity(formula: Formula, name: str) -> Input:
    each = formula.input(name)
    if not isinstance(each, Input):
        raise FormulaError(
            f"`{name}` is no single quantity", "choose another input", formula.name, given=name
        )
    return each


def _usual(formula: Formula, each: Input) -> tuple[Quantity, ...]:
    window = each.usual_window
    if window is None or window.low is None or window.high is None:
        raise FormulaError(
            f"`{each.name}` has no usual range", "give the values", formula.name, given=each.name
        )
    return round_values(window)


def _cell(formula: Formula, values: Mapping[str, Value]) -> Quantity | None:
    try:
        return formula.answer.rounded(formula.evaluate(values))
    except FormulaError as error:
        if error.given and error.given not in values:
            raise
        return None
