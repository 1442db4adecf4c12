"""Inputs of a formula as boxes to type into, and the values that a page holds beside them."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from generator.formulas import AnyInput, Choice, Formula, Input, Rows, Sizes
from generator.formulas.as_given import plain_numbers
from generator.formulas.settling import settle
from generator.model import CalculatorSettings, Number
from generator.units import UNITS, Clock, Quantity, UnitsError, Window, show_quantity, show_unit, show_window
from generator.units.dimension import NUMBER
from generator.units.showing import write_number
from generator.views.plan import BoxView, ChoiceView, UnitView

# What is offered beside the unit of a number whose formula says nothing of units.
_BESIDE = {
    "g": ("kg", "mg"), "kg": ("g",), "mg": ("g",), "mL": ("L",), "L": ("mL",), "mm": ("cm", "m"),
    "cm": ("mm", "m"), "m": ("mm", "cm"), "um": ("mm",), "s": ("min",), "min": ("s", "h"), "h": ("min",),
    "A": ("mA",), "mA": ("A",), "dm2": ("cm2",), "cm2": ("dm2",),
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Ranges:
    """What a lab says of a formula's numbers by name: what is usual, and what is never to be passed."""

    usual: Mapping[str, Window] = field(default_factory=dict)
    never: Mapping[str, Quantity] = field(default_factory=dict)


def lab_ranges(settings: CalculatorSettings | None) -> Ranges:
    """A lab's settings of one formula by plain names; a limit that is no quantity limits nothing."""
    if settings is None:
        return Ranges()
    never = {str(name): value for name, value in settings.never_above.items() if isinstance(value, Quantity)}
    return Ranges({str(name): window for name, window in settings.usual.items()}, never)


def unit_view(symbol: str) -> UnitView:
    """A unit with its exact way to SI, and how else it is typed."""
    unit = UNITS[symbol]
    return UnitView(
        symbol,
        show_unit(symbol),
        float(unit.numerator),
        float(unit.denominator),
        float(unit.offset),
        unit.spellings,
    )


def counted_unit_view(symbol: str, counted: str) -> UnitView:
    """A unit with its exact way to the one in which a lab's own formula counts; a share counts as a part."""
    unit = unit_view(symbol)
    if UNITS[symbol].dimension == NUMBER:
        return unit
    if symbol == counted:
        return UnitView(symbol, unit.shown, spellings=unit.spellings)
    factor = UNITS[symbol].factor / UNITS[counted].factor
    return replace(unit, numerator=float(factor.numerator), denominator=float(factor.denominator))


def box_view(
    wanted: AnyInput, given: Any = None, ranges: Ranges | None = None, as_given: bool = False
) -> BoxView:
    """An input with what was given for it; a quantity's own unit comes first.

    `as_given` is for a lab's own formula, which counts in the unit of what is given.
    """
    ranges = ranges or Ranges()
    match wanted:
        case Input():
            return _quantity_box(wanted, given, ranges, as_given)
        case Rows():
            return _rows_box(wanted, tuple(given or ()), ranges, as_given)
        case Sizes():
            texts = given or wanted.default
            units = (unit_view(wanted.unit),) if wanted.unit else ()
            numbers = " ".join(_number_in(text, wanted.unit) for text in texts)
            return BoxView(wanted.name, label_of(wanted), wanted.symbol, numbers, "sizes", units)
        case Choice():
            return _choice_box(wanted, str(given or wanted.default))


def label_of(wanted: AnyInput) -> str:
    """What is typed, as a label."""
    return wanted.means[:1].upper() + wanted.means[1:]


def _quantity_box(wanted: Input, given: Any, ranges: Ranges, as_given: bool) -> BoxView:
    quantity = as_quantity(wanted, given)
    own = ranges.usual.get(wanted.name)
    first = quantity.unit if quantity is not None and quantity.unit in UNITS else wanted.unit
    if as_given and not first and own and own.high:
        first = own.high.unit
    units = _units(wanted, first, as_given)
    kind = UNITS[first].dimension
    # What a lab says in another kind of unit is told by the check; here it limits nothing.
    hard, usual = wanted.hard_window, own if own and own.dimension == kind else wanted.usual_window
    never = ranges.never.get(wanted.name)
    never = never if never and never.dimension == kind else None
    low, high = _bounds(hard, units)
    usual_low, usual_high = _bounds(usual, units)
    return BoxView(
        wanted.name,
        label_of(wanted),
        wanted.symbol,
        _number(wanted, quantity),
        units=units,
        whole=wanted.whole,
        clock=wanted.clock,
        usual=_window_words(wanted, usual),
        hard=_window_words(wanted, hard),
        because=wanted.because,
        low=low,
        high=high,
        usual_low=usual_low,
        usual_high=usual_high,
        never=_bounds(Window(None, never), units)[1] if never else None,
        never_shown=show_quantity(never) if never else "",
    )


def _units(wanted: Input, first: str, as_given: bool) -> tuple[UnitView, ...]:
    beside = () if wanted.unit else _BESIDE.get(first, ())
    symbols = [symbol for symbol in dict.fromkeys((first, *wanted.all_units, *beside)) if symbol]
    if as_given:
        return tuple(counted_unit_view(symbol, first) for symbol in symbols)
    return tuple(unit_view(symbol) for symbol in symbols)


def _number(wanted: Input, quantity: Quantity | None) -> str:
    if quantity is None:
        return ""
    if wanted.clock:
        return clock_text(quantity)
    return write_number(quantity)


def clock_text(quantity: Quantity) -> str:
    """A time of day, given in minutes after midnight, as 13:10."""
    return str(Clock(int(quantity.to("min").number)))


def _window_words(wanted: Input, window: Window | None) -> str:
    if window is None:
        return ""
    if wanted.clock and window.low and window.high:
        return f"{clock_text(window.low)} to {clock_text(window.high)}"
    return show_window(window)


def as_quantity(wanted: Input, given: Any) -> Quantity | None:
    """What was given for an input as a quantity, else its default; None where there is neither."""
    match given:
        case Quantity():
            return given
        case Number():
            return Quantity(given.value, "")
        case str():
            try:
                return wanted.read(given)
            except UnitsError:
                return None
        case int() | float():
            return Quantity(float(given), "", 0 if float(given).is_integer() else None)
    return wanted.default_quantity


def _bounds(window: Window | None, units: tuple[UnitView, ...]) -> tuple[float | None, float | None]:
    """The sides in what the page counts in: coherent SI, or the one unit of a lab's own formula."""
    if window is None:
        return None, None
    return _counted(window.low, units), _counted(window.high, units)


def _counted(side: Quantity | None, units: tuple[UnitView, ...]) -> float | None:
    if side is None:
        return None
    first = units[0] if units else UnitView("", "")
    is_counted = bool(first.symbol) and first.numerator == first.denominator == 1.0 and not first.offset
    return side.to(first.symbol).number if is_counted else side.si


def _rows_box(wanted: Rows, given: tuple[Any, ...], ranges: Ranges, as_given: bool) -> BoxView:
    first: Mapping[str, Any] = given[0] if given else {}
    columns = tuple(
        _quantity_box(column, first.get(column.name) if as_given else None, ranges, as_given)
        for column in wanted.columns
    )
    units = tuple(column.units[0].symbol if column.units else "" for column in columns)
    rows = tuple(
        tuple(
            _cell(column, row[column.name], unit) for column, unit in zip(wanted.columns, units, strict=True)
        )
        for row in given
    )
    return BoxView(wanted.name, label_of(wanted), wanted.symbol, kind="rows", columns=columns, rows=rows)


def _cell(column: Input, value: Any, unit: str) -> str:
    quantity = as_quantity(column, value)
    if quantity is None:
        return ""
    return write_number(quantity.to(unit) if quantity.unit and unit and quantity.unit != unit else quantity)


def _number_in(text: Any, unit: str) -> str:
    quantity = text if isinstance(text, Quantity) else Input("", "", "", unit).read(str(text))
    return write_number(quantity.to(unit) if quantity.unit != unit else quantity)


def _choice_box(wanted: Choice, chosen: str) -> BoxView:
    choices = tuple(
        ChoiceView(row.name, row.title, wanted.table.record(row.name) or {}) for row in wanted.table.rows
    )
    return BoxView(wanted.name, label_of(wanted), wanted.symbol, chosen, "choice", choices=choices)


def counted_values(formula: Formula, values: Mapping[str, Any]) -> dict[str, object]:
    """Every input by name as its functions on the page take it, defaults included: SI, or plain numbers."""
    if formula.as_given:
        values, _ = plain_numbers(values, formula.answer.like, formula.answer.unit)
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
            return str(value)
        case tuple() | list():
            return "; ".join(
                " × ".join(shown_value(cell) for cell in row.values())
                if isinstance(row, Mapping)
                else shown_value(row)
                for row in value
            )
    return str(value)
