"""What is wrong in a lab's settings of formulas: a name that is not there, a unit of another kind."""

from collections.abc import Iterator, Mapping
from typing import Any

from generator.formulas import Formula, Input, Rows
from generator.model import CalculatorSettings, Lab
from generator.problems import Level, Location, Problem
from generator.sums.known import Known, nearest_input
from generator.sums.limits import names_answer
from generator.units import UNITS, Dimension, Quantity, Window, show_quantity


def settings_problems(lab: Lab, known: Known) -> Iterator[Problem]:
    """unknown-name and unit-missing for everything under `calculators`."""
    for name, settings in lab.calculators.items():
        formula = known.find(str(name))
        if formula is None:
            yield _problem(
                "unknown-name", name, f"there is no formula `{name}`", known.nearest(str(name)), settings
            )
        else:
            yield from _in_settings(formula, settings)


def _in_settings(formula: Formula, settings: CalculatorSettings) -> Iterator[Problem]:
    fields: tuple[tuple[str, Mapping[Any, object]], ...] = (
        ("defaults", settings.defaults),
        ("usual", settings.usual),
        ("never_above", settings.never_above),
    )
    kinds = _kinds(formula)
    for field, values in fields:
        for name, value in values.items():
            is_answer = field == "never_above" and names_answer(formula, str(name))
            if not is_answer and str(name) not in kinds:
                what = f"`{field}` of {formula.name} names `{name}`, which is no input of it"
                yield _problem("unknown-name", name, what, nearest_input(str(name), kinds), settings)
            elif not formula.as_given:
                wanted = formula.answer.unit if is_answer else kinds[str(name)]
                yield from _in_kind(formula, field, name, value, wanted, settings)


def _in_kind(
    formula: Formula, field: str, name: str, value: object, wanted: str, settings: CalculatorSettings
) -> Iterator[Problem]:
    found = _one(value)
    if found is not None and not _agree(found.dimension, UNITS[wanted].dimension):
        what = f"`{name}` under `{field}` of {formula.name} is {show_quantity(found)}: a {found.dimension}"
        unit = wanted or "a plain number"
        yield _problem("unit-missing", name, what, f"give it in {unit} or a unit of that kind", settings)


def _agree(found: Dimension, wanted: Dimension) -> bool:
    return found == wanted or found.powers == wanted.powers


def _one(value: object) -> Quantity | None:
    if isinstance(value, Window):
        return value.high or value.low
    return value if isinstance(value, Quantity) else None


def _kinds(formula: Formula) -> dict[str, str]:
    """Every input and column by name, with its unit."""
    kinds: dict[str, str] = {}
    for each in formula.inputs:
        columns = each.columns if isinstance(each, Rows) else ()
        kinds[each.name] = each.unit if isinstance(each, Input) else ""
        kinds |= {column.name: column.unit for column in columns}
    return kinds


def _problem(rule: str, name: str, what: str, fix: str, settings: CalculatorSettings) -> Problem:
    where: Location = getattr(name, "where", settings.where)
    return Problem(rule, Level.ERROR, where, what, fix)
