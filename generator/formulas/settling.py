"""Turns what a lab gives into the numbers of a tape, and refuses what cannot be."""

import re
from collections.abc import Mapping, Sequence

from generator.formulas.errors import FormulaError
from generator.formulas.evaluate import Givens
from generator.formulas.inputs import AnyInput, Choice, Input, Rows, Sizes, wanted
from generator.units import UNITS, Counted, Quantity, UnitsError, read_quantity, show_quantity, show_window
from generator.units.dimension import DIFFERENCE, NUMBER, PIECES, TEMPERATURE

One = Quantity | Counted | float | str
Value = One | Sequence[One] | Sequence[Mapping[str, One]]
Values = Mapping[str, Value]

# A bound met to this part of itself is met: the value may come from another unit.
EDGE = 1e-12


def settle(inputs: tuple[AnyInput, ...], values: Values, formula: str) -> Givens:
    """The values and the defaults in coherent SI; FormulaError for what is missing, unknown or outside."""
    for name in values:
        wanted(name, inputs, formula)
    quantities: dict[str, float] = {}
    rows: dict[str, tuple[Mapping[str, float], ...]] = {}
    sizes: dict[str, tuple[float, ...]] = {}
    records: dict[str, Mapping[str, float]] = {}
    for each in inputs:
        value = values.get(each.name)
        match each:
            case Input():
                quantities[each.name] = _quantity(each, value, formula)
            case Rows():
                rows[each.name] = _rows(each, value, formula)
            case Sizes():
                sizes[each.name] = _sizes(each, value, formula)
            case Choice():
                records[each.name] = _record(each, value, formula)
    return Givens(quantities, rows, sizes, records)


def _quantity(wanted: Input, value: Value | None, formula: str) -> float:
    if value is None:
        default = wanted.default_quantity
        if default is None:
            raise _missing(wanted, formula)
        return default.si
    return in_range(wanted, as_quantity(wanted, value, formula), formula)


def as_quantity(wanted: Input, value: Value, formula: str = "") -> Quantity:
    """What was given as a quantity of the input's kind; FormulaError where it is none."""
    quantity = _read(wanted, value, formula)
    if not _same_kind(wanted, quantity):
        kinds = f"{_kind(quantity.unit)} and not {_kind(wanted.unit)}"
        what = f"{_name(wanted)} is {show_quantity(quantity)}: {kinds}"
        raise FormulaError(what, f"give it in {_units(wanted)}", formula, given=wanted.name)
    return quantity


def _read(wanted: Input, value: Value, formula: str) -> Quantity:
    match value:
        case Quantity():
            return value
        case Counted(number):
            return Quantity(float(number), "" if wanted.dimension == NUMBER else wanted.unit)
        case str():
            return _from_text(wanted, value, formula)
        case bool():
            pass
        case int() | float():
            if wanted.dimension == PIECES or not wanted.unit:
                return Quantity(float(value), wanted.unit)
            what = f"{_name(wanted)} is {value:g} without a unit"
            raise FormulaError(what, f"write {value:g} {wanted.unit}", formula, given=wanted.name)
    raise FormulaError(
        f"{_name(wanted)} is no quantity", f"give it in {_units(wanted)}", formula, given=wanted.name
    )


def _from_text(wanted: Input, text: str, formula: str) -> Quantity:
    try:
        return wanted.read(text)
    except UnitsError as error:
        try:
            return read_quantity(text)
        except UnitsError:
            fix = f"write {text} {wanted.unit}" if re.fullmatch(r"[0-9.]+", text.strip()) else error.fix
            raise FormulaError(error.message, fix, formula, given=wanted.name) from error


def _kind(unit: str) -> str:
    """What a unit measures; shares by mass and by volume are told apart."""
    return {"% w/w": "a share by mass", "% v/v": "a share by volume"}.get(unit, UNITS[unit].dimension.name)


def _same_kind(wanted: Input, quantity: Quantity) -> bool:
    ours, theirs = wanted.dimension, quantity.dimension
    if {wanted.unit, quantity.unit} == {"% w/w", "% v/v"}:
        return False
    if ours == theirs:
        return True
    return (ours == PIECES and not quantity.unit) or (
        ours == DIFFERENCE and theirs == TEMPERATURE and quantity.unit == "K"
    )


def in_range(wanted: Input, quantity: Quantity, formula: str = "") -> float:
    """The SI value of a quantity inside the hard range; FormulaError with the reason outside it."""
    value = quantity.si
    if wanted.whole and value != int(value):
        what = f"{_name(wanted)} is {show_quantity(quantity)}, and must be a whole number"
        raise FormulaError(what, "count again", formula, given=wanted.name)
    low, high = bounds(wanted)
    if (low is not None and value < low - EDGE * abs(low)) or (
        high is not None and value > high + EDGE * abs(high)
    ):
        what = f"{_name(wanted)} is {show_quantity(quantity)}, and must be {range_in_words(wanted)}"
        raise FormulaError(what, "check the number and its unit", formula, given=wanted.name)
    return value


def bounds(wanted: Input) -> tuple[float | None, float | None]:
    """The hard range in coherent SI."""
    window = wanted.hard_window
    if window is None:
        return None, None
    return (window.low.si if window.low else None), (window.high.si if window.high else None)


def range_in_words(wanted: Input) -> str:
    """The hard range and why: "up to 100 %: no more metal than ..."."""
    window = wanted.hard_window
    if window is None:
        return ""
    return show_window(window) + (f": {wanted.because}" if wanted.because else "")


def _rows(wanted: Rows, value: Value | None, formula: str) -> tuple[Mapping[str, float], ...]:
    if value is None:
        raise _missing(wanted, formula)
    if isinstance(value, str) or not isinstance(value, Sequence):
        fix = "give a list of rows with " + ", ".join(column.name for column in wanted.columns)
        raise FormulaError(f"{_name(wanted)} is no list", fix, formula, given=wanted.name)
    return tuple(_row(wanted, row, number, formula) for number, row in enumerate(value, 1))


def _row(rows: Rows, row: object, number: int, formula: str) -> Mapping[str, float]:
    names = {column.name for column in rows.columns}
    if not isinstance(row, Mapping) or set(row) != names:
        what = f"row {number} of {_name(rows)} has not just {' and '.join(c.name for c in rows.columns)}"
        raise FormulaError(what, "give each row these and no others", formula, given=rows.name)
    return {c.name: in_range(c, as_quantity(c, row[c.name], formula), formula) for c in rows.columns}


def _sizes(wanted: Sizes, value: Value | None, formula: str) -> tuple[float, ...]:
    texts: object = wanted.default if value is None else value
    if isinstance(texts, str) or not isinstance(texts, Sequence) or not texts:
        raise _missing(wanted, formula)
    size = Input(wanted.name, wanted.symbol, wanted.means, wanted.unit)
    return tuple(as_quantity(size, text, formula).si for text in texts)


def _record(wanted: Choice, value: Value | None, formula: str) -> Mapping[str, float]:
    name = wanted.default if value is None else value
    if not name:
        raise _missing(wanted, formula)
    record = wanted.table.record(name) if isinstance(name, str) else None
    if record is None:
        known = ", ".join(row.name for row in wanted.table.rows)
        raise FormulaError(
            f"`{name}` is not in the table of {wanted.table.name}", f"use one of: {known}", formula
        )
    return record


def _missing(wanted: AnyInput, formula: str) -> FormulaError:
    return FormulaError(f"{_name(wanted)} is not given", f"give `{wanted.name}`", formula, given=wanted.name)


def _name(wanted: AnyInput) -> str:
    return f"{wanted.name} ({wanted.means})"


def _units(wanted: Input) -> str:
    return " or ".join(UNITS[unit].symbol for unit in wanted.all_units if unit) or "a plain number"
