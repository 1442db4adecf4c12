"""What a formula starts from on its page, and how its answer is headed."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from generator.formulas import AnyInput, Formula, FormulaError, Input
from generator.model import CalculatorSettings, Number, Text
from generator.units import UNITS, Quantity, show_unit
from generator.units.dimension import NUMBER, Dimension
from generator.views.filling.boxes import as_quantity
from generator.views.summary import ProcedureSummary


def start_values(
    formula: Formula, settings: CalculatorSettings | None, users: Iterable[ProcedureSummary] = ()
) -> dict[str, Any]:
    """The lab's defaults, else the worked example, else the formula's defaults; what has none is left out.

    A lab's own formula takes its units from the lab's settings, else from a procedure that uses it.
    """
    example = formula.examples[0].given if formula.examples else {}
    defaults = settings_values(settings)
    found: dict[str, Any] = {}
    for each in formula.inputs:
        value = defaults.get(each.name, example.get(each.name))
        if isinstance(each, Input):
            value = as_quantity(each, value)
        if value is not None:
            found[each.name] = value
    return _in_units(formula, found, settings, users) if formula.as_given else found


def settings_values(settings: CalculatorSettings | None) -> dict[str, Any]:
    """The lab's defaults as the formulas take them."""
    return {str(name): _plain(value) for name, value in settings.defaults.items()} if settings else {}


def _plain(value: Any) -> Any:
    match value:
        case Number():
            return value.value
        case Text():
            return str(value)
        case tuple():
            return tuple({str(name): _plain(cell) for name, cell in row.items()} for row in value)
    return value


def _in_units(
    formula: Formula,
    found: Mapping[str, Any],
    settings: CalculatorSettings | None,
    users: Iterable[ProcedureSummary],
) -> dict[str, Any]:
    """Plain numbers of a lab's own formula with their units, quantities of one kind in one unit."""
    said = dict(_units_said(formula, settings, users))
    order = sorted(formula.inputs, key=lambda each: each.name != formula.answer.like)
    kinds: dict[Dimension, str] = {}
    values: dict[str, Any] = {}
    for each in order:
        value = found.get(each.name)
        if isinstance(value, Quantity):
            value = _in_one_unit(value, said.get(each.name, ""), kinds)
        if value is not None:
            values[each.name] = value
    return {each.name: values[each.name] for each in formula.inputs if each.name in values}


def _in_one_unit(value: Quantity, unit: str, kinds: dict[Dimension, str]) -> Quantity:
    if not value.unit:
        dimension = UNITS[unit].dimension
        if dimension == NUMBER:
            return value
        return Quantity(value.number, kinds.setdefault(dimension, unit), value.decimals)
    if value.dimension == NUMBER:
        return value
    return value.to(kinds.setdefault(value.dimension, value.unit))


def _units_said(
    formula: Formula, settings: CalculatorSettings | None, users: Iterable[ProcedureSummary]
) -> Iterator[tuple[str, str]]:
    for user in users:
        yield from ((name, unit) for used, name, unit in user.units if used == formula.name)
    for name, window in settings.usual.items() if settings else ():
        side = window.high or window.low
        if side:
            yield str(name), side.unit


def answer_unit(formula: Formula, values: Mapping[str, Any]) -> str:
    """The unit that the answer is first shown in; that of an input, where a lab's formula says so."""
    like = values.get(formula.answer.like)
    return like.unit if isinstance(like, Quantity) else formula.answer.unit


def answer_words(formula: Formula, values: Mapping[str, Any]) -> str:
    """The answer as the head of a column: "Current, A"."""
    unit = answer_unit(formula, values)
    words = formula.answer.means[:1].upper() + formula.answer.means[1:]
    return f"{words}, {show_unit(unit)}" if unit and not formula.answer.clock else words


def answer_shown(formula: Formula, values: Mapping[str, Any]) -> str:
    """The answer for these values as printed, or nothing where there is none."""
    try:
        return formula.answer.show(formula.evaluate(values))
    except FormulaError:
        return ""


def input_titles(inputs: tuple[AnyInput, ...]) -> dict[str, str]:
    """What each input means, by its name, as the head of a line."""
    return {each.name: each.means[:1].upper() + each.means[1:] for each in inputs}
