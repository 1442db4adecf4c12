"""Inputs of a formula as boxes to type into, and the values that a page holds beside them."""

from collections.abc import Mapping
from typing import Any

from generator.formulas import AnyInput, Choice, Formula, Input, Rows, Sizes
from generator.formulas.settling import settle
from generator.model import Number
from generator.units import UNITS, Quantity, Window, show_quantity, show_unit, show_window
from generator.units.showing import write_number
from generator.views.plan import BoxView, ChoiceView, UnitView


def unit_view(symbol: str) -> UnitView:
    """A unit with its exact way to SI."""
    unit = UNITS[symbol]
    return UnitView(
        symbol, show_unit(symbol), float(unit.numerator), float(unit.denominator), float(unit.offset)
    )


def box_view(wanted: AnyInput, given: Any = None, usual: Window | None = None) -> BoxView:
    """An input with what was given for it; a quantity's own unit comes first."""
    match wanted:
        case Input():
            return _quantity_box(wanted, given, usual)
        case Rows():
            columns = tuple(_quantity_box(column, None, None) for column in wanted.columns)
            rows = tuple(_row(wanted, row) for row in given or ())
            return BoxView(
                wanted.name, _label(wanted), wanted.symbol, kind="rows", columns=columns, rows=rows
            )
        case Sizes():
            texts = given or wanted.default
            units = (unit_view(wanted.unit),)
            numbers = " ".join(_number_in(text, wanted.unit) for text in texts)
            return BoxView(wanted.name, _label(wanted), wanted.symbol, numbers, "sizes", units)
        case Choice():
            return _choice_box(wanted, str(given or wanted.default))


def _label(wanted: AnyInput) -> str:
    return wanted.means[:1].upper() + wanted.means[1:]


def _quantity_box(wanted: Input, given: Any, usual: Window | None) -> BoxView:
    quantity = _as_quantity(wanted, given)
    first = quantity.unit if quantity is not None and quantity.unit in UNITS else wanted.unit
    symbols = tuple(dict.fromkeys((first, *wanted.all_units)))
    hard, common = wanted.hard_window, usual or wanted.usual_window
    low, high = _bounds(hard)
    usual_low, usual_high = _bounds(common)
    return BoxView(
        wanted.name,
        _label(wanted),
        wanted.symbol,
        write_number(quantity) if quantity is not None else "",
        units=tuple(unit_view(symbol) for symbol in symbols if symbol),
        whole=wanted.whole,
        usual=show_window(common) if common else "",
        hard=show_window(hard) if hard else "",
        because=wanted.because,
        low=low,
        high=high,
        usual_low=usual_low,
        usual_high=usual_high,
    )


def _as_quantity(wanted: Input, given: Any) -> Quantity | None:
    match given:
        case Quantity():
            return given
        case Number():
            return Quantity(given.value, "")
        case str():
            return wanted.read(given)
        case int() | float():
            return Quantity(float(given), "")
    return wanted.default_quantity


def _bounds(window: Window | None) -> tuple[float | None, float | None]:
    if window is None:
        return None, None
    return (window.low.si if window.low else None), (window.high.si if window.high else None)


def _row(wanted: Rows, row: Mapping[str, Any]) -> tuple[str, ...]:
    return tuple(_cell(column, row[column.name]) for column in wanted.columns)


def _cell(column: Input, value: Any) -> str:
    quantity = _as_quantity(column, value)
    if quantity is None:
        return ""
    return write_number(quantity.to(column.unit) if quantity.unit and column.unit else quantity)


def _number_in(text: Any, unit: str) -> str:
    quantity = text if isinstance(text, Quantity) else Input("", "", "", unit).read(str(text))
    return write_number(quantity.to(unit))


def _choice_box(wanted: Choice, chosen: str) -> BoxView:
    choices = tuple(
        ChoiceView(row.name, row.title, wanted.table.record(row.name) or {}) for row in wanted.table.rows
    )
    return BoxView(wanted.name, _label(wanted), wanted.symbol, chosen, "choice", choices=choices)


def si_values(formula: Formula, values: Mapping[str, Any]) -> dict[str, object]:
    """Every input of a formula in SI, defaults included, by name: numbers, rows, sizes, records."""
    givens = settle(formula.inputs, values, formula.name)
    return {**givens.quantities, **givens.rows, **givens.sizes, **givens.records}


def shown_value(value: Any) -> str:
    """A value as a reader sees it: a quantity, a number, a name, or rows."""
    match value:
        case Quantity():
            return show_quantity(value)
        case Number():
            return value.text
        case str():
            return value
        case tuple() | list():
            return "; ".join(
                " × ".join(shown_value(cell) for cell in row.values())
                if isinstance(row, Mapping)
                else shown_value(row)
                for row in value
            )
    return str(value)
