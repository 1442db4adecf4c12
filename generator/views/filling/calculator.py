"""The page of a formula, with the lab's own defaults and limits."""

from collections.abc import Iterable, Iterator, Mapping
from typing import Any

from generator.formulas import Example, Formula, Input
from generator.formulas.inverse import solvable
from generator.study import LabStudy
from generator.sums import answer_limit
from generator.units import UNITS, Quantity, UnitsError, read_quantity, show_quantity, show_unit
from generator.units.dimension import NUMBER
from generator.views.calculator import CalculatorView, WorkedView
from generator.views.filling.answers import answer_shown, answer_unit, input_titles, start_values
from generator.views.filling.boxes import box_view, counted_unit_view, lab_ranges, shown_value, unit_view
from generator.views.filling.chart import chart_view
from generator.views.filling.effects import effect_sentences, naive_sentence
from generator.views.filling.reckoner import reckoner_view
from generator.views.filling.words import named
from generator.views.plan import UnitView
from generator.views.summary import ProcedureSummary


def calculator_view(
    formula: Formula, lab: LabStudy, summaries: Iterable[ProcedureSummary] = ()
) -> CalculatorView:
    """Boxes start with the lab's defaults, else with the worked example, else with the formula's defaults."""
    users = tuple(one for one in summaries if formula.name in one.formulas)
    settings = lab.lab.calculators.get(formula.name)
    values = start_values(formula, settings, users)
    ranges, limit, answer = lab_ranges(settings), answer_limit(formula, settings), formula.answer
    units = _answer_units(formula, values)
    boxes = tuple(box_view(each, values.get(each.name), ranges, formula.as_given) for each in formula.inputs)
    return CalculatorView(
        formula.name,
        formula.title,
        f"Decides {formula.decides}." if formula.decides else "",
        boxes,
        answer.means[:1].upper() + answer.means[1:],
        answer.symbol,
        units,
        tuple(answer.decimals if formula.as_given else answer.decimals_in(unit.symbol) for unit in units),
        answer.toward,
        answer.clock,
        shown=answer_shown(formula, values),
        solve=solvable(formula),
        examples=tuple(_worked(formula, example) for example in formula.examples),
        cautions=formula.cautions,
        source=formula.source,
        never_above=answer.never_above,
        never=_counted_limit(formula, limit, units) if limit else None,
        never_shown=show_quantity(limit) if limit else "",
        who="For staff only." if formula.who == "staff" else "",
        naive=formula.naive.forgets if formula.naive else "",
        naive_shown=naive_sentence(formula, values),
        effects=tuple(effect_sentences(formula, values)),
        chart=chart_view(formula, values, ranges),
        requires=tuple(one.otherwise for one in formula.requires),
        reckoner=reckoner_view(formula, values, ranges, limit),
        used_in=tuple(one.row.link for one in users),
        date=f"{lab.today.day} {lab.today:%B %Y}",
        search_text="\n".join(_found_by(formula)),
    )


def _found_by(formula: Formula) -> Iterator[str]:
    """What a search finds a calculator by: its words, and each unit as it is printed and as it is typed."""
    yield formula.title
    yield formula.decides
    for each in formula.inputs:
        units = each.all_units if isinstance(each, Input) else ()
        shown = " ".join(f"{show_unit(unit)} {unit}" for unit in units if unit)
        yield f"{each.means} {shown}".strip()


def _answer_units(formula: Formula, values: Mapping[str, Any]) -> tuple[UnitView, ...]:
    if formula.as_given:
        unit = answer_unit(formula, values)
        return (counted_unit_view(unit, unit),)
    return tuple(unit_view(unit) for unit in formula.answer.all_units)


def _worked(formula: Formula, example: Example) -> WorkedView:
    titles = input_titles(formula.inputs)
    given = tuple(
        (titles.get(name, named(name)), _example_value(formula, name, value))
        for name, value in example.given.items()
    )
    return WorkedView(given, _answer_printed(formula, example.answer), example.source)


def _answer_printed(formula: Formula, text: str) -> str:
    if formula.answer.clock:
        return formula.answer.show(read_quantity(text))
    return _as_printed(text)


def _example_value(formula: Formula, name: str, value: Any) -> str:
    wanted = formula.input(name)
    if isinstance(value, tuple | list):
        return "; ".join(
            " × ".join(_as_printed(cell) for cell in (row.values() if isinstance(row, Mapping) else (row,)))
            for row in value
        )
    if isinstance(wanted, Input) and not wanted.clock:
        return _as_printed(value)
    return shown_value(value)


def _as_printed(value: Any) -> str:
    """An example's text with its units as they are printed."""
    try:
        return show_quantity(read_quantity(value)) if isinstance(value, str) else f"{value:.15g}"
    except (UnitsError, ValueError, TypeError):
        return shown_value(value)


def _counted_limit(formula: Formula, limit: Quantity, units: tuple[UnitView, ...]) -> float | None:
    """The limit in what the page counts in; None for one of another kind, which a check tells."""
    symbol = units[0].symbol
    if limit.dimension != UNITS[symbol].dimension:
        return None
    if formula.as_given and limit.dimension != NUMBER:
        return limit.to(symbol).number
    return limit.si
