"""The numbers of the class's part as boxes, and the sums that follow from them, inner ones first."""

from collections.abc import Iterator, Mapping
from typing import Any

from generator.formulas import AnyInput, Formula
from generator.model import FormulaRef, Number, Text
from generator.study import Study
from generator.sums import Given, Sum
from generator.views.filling.boxes import box_view, si_values, unit_view
from generator.views.filling.words import named
from generator.views.plan import JobView, SumView
from generator.views.told import show_given

NOTE = "These are the numbers of the class part. Put in those of your own; what depends on them follows."


def job_view(study: Study, formulas: Mapping[str, Formula]) -> JobView | None:
    """None for a procedure whose sums ask for nothing of the job."""
    # A lab's own formula counts in the units as given; the page's form counts in SI, so it leaves such a
    # sum alone.
    found = [
        (sum, formula)
        for sum in study.sums.by_key.values()
        if (formula := formulas.get(sum.formula)) and not formula.as_given
    ]
    asked: dict[str, AnyInput] = {}
    for sum, formula in found:
        for given in sum.inputs:
            wanted = formula.input(given.name)
            if given.origin == "job" and wanted is not None:
                asked.setdefault(given.name, wanted)
    if not asked:
        return None
    job = {str(name): value for name, value in study.procedure.job.items()}
    boxes = tuple(box_view(wanted, job[name]) for name, wanted in asked.items())
    return JobView(boxes, tuple(_sum_view(study, sum, formula) for sum, formula in found), NOTE)


def _sum_view(study: Study, sum: Sum, formula: Formula) -> SumView:
    answer = formula.answer
    given = {one.name: one for one in sum.inputs}
    values = {name: plain_value(one.value) for name, one in given.items()}
    in_si = si_values(formula, values)
    sources = tuple(_sources(formula, given))
    held = {name: in_si[name] for name, source in sources if not source}
    return SumView(
        sum.key,
        formula.name,
        _title(study, sum, formula),
        show_given(sum.answer, FormulaRef(Text(formula.name)), {formula.name: formula}),
        unit_view(answer.unit),
        0 if sum.answer.unit == "min" and sum.answer.number >= 10 else answer.decimals,
        sources,
        held,
        answer.toward,
        tuple(one.otherwise for one in formula.requires),
    )


def _sources(formula: Formula, given: dict[str, Given]) -> Iterator[tuple[str, str]]:
    for wanted in formula.inputs:
        one = given.get(wanted.name)
        match one.origin if one else "":
            case "job":
                yield wanted.name, f"box:{wanted.name}"
            case "formula":
                yield wanted.name, f"sum:job.{wanted.name}"
            case _:
                yield wanted.name, ""


def _title(study: Study, sum: Sum, formula: Formula) -> str:
    """A job value under its own name, a step's time or current under the formula's title."""
    id, _, field = sum.key.rpartition(".")
    value = study.procedure.job.get(field) if id == "job" else None
    return named(field) if isinstance(value, FormulaRef) else formula.title


def plain_value(value: Any) -> Any:
    """A value of the model as the formulas take it."""
    match value:
        case Number():
            return value.value
        case tuple():
            return tuple({name: plain_value(cell) for name, cell in row.items()} for row in value)
        case Text():
            return str(value)
    return value
