"""Works one formula out, or turned round, with a lab's defaults and inside its limits."""

from collections.abc import Mapping
from typing import Any

from generator.cli.calculated import Calculated
from generator.formulas import AnyInput, Formula, FormulaError, Input, Rows
from generator.formulas.inverse import solve_for
from generator.model import CalculatorSettings
from generator.sums import passed_limits
from generator.units import UNITS, Quantity, UnitsError, read_unit, show_quantity
from generator.views.filling.answers import settings_values
from generator.views.filling.boxes import as_quantity

ANSWER = "answer"


def work_out(
    formula: Formula,
    typed: Mapping[str, Any],
    settings: CalculatorSettings | None = None,
    wanted: str = "",
    unit: str = "",
) -> Calculated:
    """What comes out; FormulaError for what is missing, unknown, outside, or above the lab's limits."""
    if wanted in typed:
        raise FormulaError(f"`{wanted}` is to be worked out and is given too", "leave it out", formula.name)
    _hold_to_kinds(formula, typed, settings)
    values, origins = _with_defaults(formula, typed, settings, wanted)
    found = _solved(formula, values, wanted) if wanted else formula.evaluate(values)
    read = _read_all(formula, {**values, wanted: found} if wanted else values)
    answer = solve_for(formula, wanted).answer_input.read(values[ANSWER]) if wanted else found
    _hold_to_limits(formula, read, answer, settings)
    if wanted:
        values[ANSWER] = answer
    usual = {str(name): window for name, window in settings.usual.items()} if settings else {}
    return Calculated(formula, found, values, origins, usual, wanted, _unit(formula, unit, found))


def _hold_to_kinds(
    formula: Formula, typed: Mapping[str, Any], settings: CalculatorSettings | None
) -> None:
    """A lab's own formula says nothing of units; what the lab calls usual does."""
    for name, window in settings.usual.items() if settings and formula.as_given else ():
        value, side = typed.get(str(name)), window.high or window.low
        if value is None or side is None or not side.unit:
            continue
        if not isinstance(value, Quantity):
            raise FormulaError(
                f"{name} is {value:g} without a unit", f"write {value:g} {side.unit}", formula.name
            )
        if value.dimension != side.dimension:
            what = f"{name} is {show_quantity(value)}: {value.dimension} and not {side.dimension}"
            raise FormulaError(what, f"give it in {side.unit}", formula.name, given=str(name))


def _solved(formula: Formula, values: Mapping[str, Any], wanted: str) -> Quantity:
    if ANSWER not in values:
        raise FormulaError("the answer is not given", f'give {ANSWER}="..."', formula.name, given=ANSWER)
    others = {name: value for name, value in values.items() if name != ANSWER}
    return solve_for(formula, wanted).evaluate(values[ANSWER], others)


def _with_defaults(
    formula: Formula, typed: Mapping[str, Any], settings: CalculatorSettings | None, wanted: str
) -> tuple[dict[str, Any], dict[str, str]]:
    """Every input as typed, else the lab's default, else the formula's; and which of the two it was."""
    values, origins = dict(typed), dict[str, str]()
    own = settings_values(settings)
    for each in formula.inputs:
        if each.name in values or each.name == wanted:
            continue
        default = each.default_quantity if isinstance(each, Input) else getattr(each, "default", "")
        if each.name in own:
            values[each.name], origins[each.name] = own[each.name], "this lab's default"
        elif default:
            values[each.name], origins[each.name] = default, "the formula's default"
    return values, origins


def _read_all(formula: Formula, values: Mapping[str, Any]) -> dict[str, Any]:
    """The same with every single quantity read, so that it can be held against a limit."""
    return {name: _read(formula.input(name), value) for name, value in values.items() if name != ANSWER}


def _read(each: AnyInput | None, value: Any) -> Any:
    if isinstance(each, Input):
        return as_quantity(each, value) or value
    if isinstance(each, Rows):
        columns = {column.name: column for column in each.columns}
        return tuple({name: _read(columns[name], cell) for name, cell in row.items()} for row in value)
    return value


def _hold_to_limits(
    formula: Formula, values: Mapping[str, Any], answer: Quantity, settings: CalculatorSettings | None
) -> None:
    for passed in passed_limits(formula, values, answer, settings):
        name = passed.name or formula.answer.means
        value = passed.value if passed.name else formula.answer.rounded(passed.value)
        what = f"{name} is {show_quantity(value)}, and never above {show_quantity(passed.limit)} in this lab"
        fix = "bring it down; the limit stands under `calculators`"
        raise FormulaError(what, fix, formula.name, given=passed.name)


def _unit(formula: Formula, text: str, found: Quantity) -> str:
    """The symbol of the unit that the answer is asked in; FormulaError for none, or one of another kind."""
    if not text:
        return ""
    try:
        symbol = read_unit(text)
    except UnitsError as error:
        raise FormulaError(error.message, error.fix, formula.name) from error
    if UNITS[symbol].dimension != found.dimension:
        what = f"the answer is in {found.unit or 'plain numbers'}, and {symbol} measures something else"
        raise FormulaError(what, f"ask for {' or '.join(formula.answer.all_units)}", formula.name)
    return symbol
