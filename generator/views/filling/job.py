"""The numbers of the class's part as boxes, and the sums that follow from them, inner ones first."""

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Any

from generator.formulas import AnyInput, Formula, Input, Rows
from generator.formulas.as_given import plain_numbers
from generator.model import FormulaRef, Number, Text
from generator.study import Study
from generator.sums import Given, Sum
from generator.units import UNITS, Quantity
from generator.units.dimension import NUMBER
from generator.views.filling.answers import answer_unit
from generator.views.filling.boxes import Ranges, box_view, counted_values, lab_ranges, unit_view
from generator.views.filling.fences import sum_fences, window_fence
from generator.views.filling.words import named
from generator.views.plan import BoxView, JobView, SumView, UnitView
from generator.views.told import show_given

NOTE = "These are the numbers of the class part. Put in those of your own; what depends on them follows."
# From so many minutes on, a time is shown in whole ones.
_WHOLE_FROM = 10.0


def job_view(study: Study, formulas: Mapping[str, Formula]) -> JobView | None:
    """None for a procedure whose sums and amounts ask for nothing of the job."""
    found = [
        (sum, formula)
        for sum in study.sums.by_key.values()
        if (formula := formulas.get(sum.formula)) is not None
    ]
    asked = dict(_asked(study, found))
    if not asked:
        return None
    job = {str(name): value for name, value in study.procedure.job.items()}
    boxes = tuple(_box(study, name, wanted, job[name], ranges) for name, (wanted, ranges) in asked.items())
    return JobView(boxes, tuple(_sum_view(study, sum, formula) for sum, formula in found), NOTE)


def _asked(study: Study, found: list[tuple[Sum, Formula]]) -> Iterator[tuple[str, tuple[AnyInput, Ranges]]]:
    """The job's plain values that a sum or an amount takes; the library's words before a lab's own."""
    seen: set[str] = set()
    for sum, formula in sorted(found, key=lambda one: one[1].as_given):
        ranges = lab_ranges(study.lab.calculators.get(formula.name))
        for given in sum.inputs:
            wanted = formula.input(given.name)
            if given.origin == "job" and wanted is not None and given.name not in seen:
                seen.add(given.name)
                yield given.name, (wanted, ranges)
    for step in study.procedure.steps:
        for amount in map(str, step.use.values()):
            value = study.procedure.job.get(amount)
            if isinstance(value, Quantity) and amount not in seen:
                seen.add(amount)
                yield amount, (Input(amount, "", named(amount), value.unit), Ranges())


def _box(study: Study, name: str, wanted: AnyInput, given: Any, ranges: Ranges) -> BoxView:
    """A box that also says what the procedure is made for."""
    box = box_view(wanted, given, ranges)
    columns = tuple(replace(each, fences=window_fence(study, each.name)) for each in box.columns)
    return replace(box, fences=window_fence(study, name), columns=columns)


def _sum_view(study: Study, sum: Sum, formula: Formula) -> SumView:
    given = {one.name: one for one in sum.inputs}
    values = {name: plain_value(one.value) for name, one in given.items()}
    counted = counted_values(formula, values)
    sources = tuple(_sources(formula, given))
    unit = answer_unit(formula, values)
    return SumView(
        sum.key,
        formula.name,
        _title(study, sum, formula),
        show_given(sum.answer, FormulaRef(Text(formula.name)), {formula.name: formula}),
        unit_view(unit),
        formula.answer.decimals,
        sources,
        {name: counted[name] for name, source in sources if not source},
        formula.answer.toward,
        tuple(one.otherwise for one in formula.requires),
        takes=dict(_takes(formula, values)),
        gives=unit_view(unit) if formula.as_given and UNITS[unit].dimension != NUMBER else None,
        whole_from=_WHOLE_FROM if unit == "min" else 0.0,
        fences=sum_fences(study, sum, formula),
    )


def _takes(formula: Formula, values: Mapping[str, Any]) -> Iterator[tuple[str, UnitView]]:
    """In which units a lab's own formula counts what it is given; shares are counted in SI as elsewhere."""
    if not formula.as_given:
        return
    _, said = plain_numbers(values, formula.answer.like, formula.answer.unit)
    kinds = {UNITS[unit].dimension: unit for unit in said.values()}
    for each in formula.inputs:
        value = values.get(each.name)
        cells = value[0] if isinstance(each, Rows) and value else {each.name: value}
        for column, cell in cells.items():
            if isinstance(cell, Quantity) and cell.dimension != NUMBER:
                key = f"{each.name}.{column}" if isinstance(each, Rows) else each.name
                yield key, unit_view(kinds.setdefault(cell.dimension, cell.unit))


def _sources(formula: Formula, given: Mapping[str, Given]) -> Iterator[tuple[str, str]]:
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
