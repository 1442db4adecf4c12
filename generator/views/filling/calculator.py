"""The page of a formula, with the lab's own defaults and limits."""

from collections.abc import Iterable, Iterator
from typing import Any

from generator.formulas import Formula
from generator.model import CalculatorSettings, FormulaRef, Lab
from generator.study import Study
from generator.views.addresses import procedure_address
from generator.views.calculator import CalculatorView, WorkedView
from generator.views.filling.boxes import box_view, shown_value, unit_view
from generator.views.filling.words import joined, low, named
from generator.views.shown import LinkView


def calculator_view(formula: Formula, lab: Lab, studies: Iterable[Study]) -> CalculatorView:
    """Boxes start with the lab's defaults, else with the worked example, else with the formula's defaults."""
    settings = lab.calculators.get(formula.name)
    answer = formula.answer
    units = answer.all_units
    titles = {one.name: one.means for one in formula.inputs}
    return CalculatorView(
        formula.name,
        formula.title,
        f"Decides {formula.decides}.",
        tuple(_boxes(formula, settings)),
        answer.means,
        answer.symbol,
        tuple(unit_view(unit) for unit in units),
        tuple(answer.decimals_in(unit) for unit in units),
        answer.toward,
        examples=tuple(
            WorkedView(
                tuple(
                    (titles.get(name, named(name)), shown_value(value))
                    for name, value in example.given.items()
                ),
                shown_value(example.answer),
                example.source,
            )
            for example in formula.examples
        ),
        cautions=formula.cautions,
        source=formula.source,
        never_above=_never_above(formula, settings),
        who="For staff only." if formula.who == "staff" else "",
        naive=_naive(formula),
        requires=tuple(one.otherwise for one in formula.requires),
        used_in=tuple(_used_in(formula, studies)),
        search_text=" ".join((formula.title, formula.decides, *titles.values())),
    )


def _boxes(formula: Formula, settings: CalculatorSettings | None) -> Iterator[Any]:
    example = formula.examples[0].given if formula.examples else {}
    for wanted in formula.inputs:
        given = settings.defaults.get(wanted.name) if settings else None
        usual = settings.usual.get(wanted.name) if settings else None
        yield box_view(wanted, given if given is not None else example.get(wanted.name), usual)


def _never_above(formula: Formula, settings: CalculatorSettings | None) -> str:
    """The formula's own words, and the lab's numbers."""
    limits = settings.never_above.items() if settings else ()
    own = joined(f"{shown_value(value)} ({low(named(str(name)))})" for name, value in limits)
    return ", ".join(part for part in (formula.answer.never_above, own) if part)


def _naive(formula: Formula) -> str:
    return f"A common slip forgets {formula.naive.forgets}." if formula.naive else ""


def _used_in(formula: Formula, studies: Iterable[Study]) -> Iterator[LinkView]:
    for study in studies:
        sums = {sum.formula for sum in study.sums.by_key.values()}
        named_in = {str(name) for step in study.procedure.steps for name in step.formulas}
        refs = {str(v.formula) for v in study.procedure.job.values() if isinstance(v, FormulaRef)}
        if formula.name in sums | named_in | refs:
            yield LinkView(study.procedure.title, procedure_address(study.procedure.id))
