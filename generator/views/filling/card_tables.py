"""The ready-reckoners of a wall card: finished answers near the class part, for a card cannot compute."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from generator.formulas import Formula, Input
from generator.formulas.reckoner import reckon, round_values
from generator.model import FormulaRef, Number, Step, Text
from generator.study import Study
from generator.sums import Given, Sum
from generator.sums.limits import answer_limit
from generator.units import Quantity, Window, show_number, show_quantity, show_unit
from generator.views.card import CardTable
from generator.views.filling.card_phrases import Phrases
from generator.views.filling.words import input_words
from generator.views.told import show_given

_MOST_COLUMNS = 6
# A row round the class part: a little under one half to one half more (ours, no source).
_AROUND = (0.55, 1.45)


@dataclass(frozen=True, slots=True)
class _Asked:
    """One value of a step that a formula sets: its bounds at the place, and the limit that the lab sets."""

    step: Step
    reference: FormulaRef
    sum: Sum
    formula: Formula
    stays: Window | None
    limit: Quantity | None


def card_tables(
    study: Study,
    steps: tuple[Step, ...],
    formulas: Mapping[str, Formula],
    numbers: Mapping[str, str],
    phrases: Phrases,
) -> tuple[CardTable, ...]:
    """A table for each value of these steps that a formula sets from the job; steps in the card's order.

    Nothing is listed that the place does not carry: no current above its supply, no time outside its own.
    """
    asked = (one for step in steps for one in _asked(study, step, formulas))
    tables = (_table(study, one, formulas, numbers[str(one.step.id)], phrases) for one in asked)
    return tuple(table for table in tables if table)


def _asked(study: Study, step: Step, formulas: Mapping[str, Formula]) -> Iterator[_Asked]:
    place = study.place(step.at)
    power = Window(None, place.power.most) if place and place.power else None
    kinds = (
        ("power", step.power.to if step.power else None, power),
        ("for", step.for_, place.time if place else None),
    )
    for field, value, stays in kinds:
        found = study.sums.by_key.get(f"{step.id}.{field}")
        if isinstance(value, FormulaRef) and found and found.formula in formulas:
            formula = formulas[found.formula]
            limit = answer_limit(formula, study.lab.calculators.get(found.formula))
            yield _Asked(step, value, found, formula, stays, limit)


def _table(
    study: Study, asked: _Asked, formulas: Mapping[str, Formula], number: str, phrases: Phrases
) -> CardTable | None:
    along = _along(study, asked)
    if along is None or asked.formula.as_given:
        return None
    wanted, given, row = along
    values = {one.name: _plain(one.value) for one in asked.sum.inputs}
    cells = [cells[0] for cells in reckon(asked.formula, wanted.name, values=values, rows=row).cells]
    kept = [(at, cell) for at, cell in zip(row, cells, strict=True) if cell and _stays(asked, cell)]
    if len(kept) < 2:
        return None
    unit = asked.formula.answer.unit
    shown = [show_given(cell, asked.reference, formulas).split("\u00a0")[0] for _, cell in kept]
    return CardTable(
        title=f"{asked.formula.title} ({phrases.at_step(number)})",
        heads=(_head(input_words(wanted), wanted.unit), *(_number(at.to(wanted.unit)) for at, _ in kept)),
        rows=((_head(asked.formula.title.partition(" for ")[0], unit), *shown),),
        note=_note(asked, given, phrases),
        step=str(asked.step.id),
    )


def _plain(value: object) -> Any:
    """A value of the model as a formula takes it."""
    match value:
        case Number():
            return value.value
        case Text():
            return str(value)
        case tuple():
            return tuple({name: _plain(cell) for name, cell in row.items()} for row in value)
    return value


def _along(study: Study, asked: _Asked) -> tuple[Input, Given, tuple[Quantity, ...]] | None:
    """The input that goes along the row: what follows from the part first, else what the lab calls usual."""
    given = {one.name: one for one in asked.sum.inputs if one.origin in ("formula", "job")}
    settings = study.lab.calculators.get(asked.formula.name)
    usual = dict(settings.usual) if settings else {}
    worked = [name for name, one in given.items() if one.origin == "formula"]
    for name in (*worked, *usual, *given):
        wanted, one = asked.formula.input(str(name)), given.get(str(name))
        if not isinstance(wanted, Input) or one is None or not isinstance(one.value, Quantity):
            continue
        range = usual.get(name) or wanted.usual_window
        row = _round(one.value.to(wanted.unit), range) if isinstance(range, Window) else ()
        if row:
            return wanted, one, row
    return None


def _round(value: Quantity, usual: Window) -> tuple[Quantity, ...]:
    """Round values about the class part's, inside what is usual."""
    low, high = (value.number * factor for factor in _AROUND)
    if usual.low:
        low = max(low, usual.low.to(value.unit).number)
    if usual.high:
        high = min(high, usual.high.to(value.unit).number)
    if not low < high:
        return ()
    return round_values(Window(Quantity(low, value.unit), Quantity(high, value.unit)), _MOST_COLUMNS)


def _stays(asked: _Asked, answer: Quantity) -> bool:
    bounds = (asked.stays, Window(None, asked.limit) if asked.limit else None)
    return all(
        bound is None or bound.dimension != answer.dimension or bound.contains(answer) for bound in bounds
    )


def _head(words: str, unit: str) -> str:
    return f"{words}, {show_unit(unit)}" if unit else words


def _number(quantity: Quantity) -> str:
    return show_number(quantity.number, quantity.decimals)


def _note(asked: _Asked, along: Given, phrases: Phrases) -> str:
    """What else the answers hang on, and what they must not exceed."""
    held = [
        f"{input_words(wanted).lower()} {show_quantity(one.value)}"
        for one in asked.sum.inputs
        if isinstance(wanted := asked.formula.input(one.name), Input)
        and one.name != along.name and isinstance(one.value, Quantity)
    ]
    supply = asked.stays.high if asked.stays and asked.stays.low is None else None
    limits = [limit for limit in (supply, asked.limit) if limit]
    most = min(limits, key=lambda limit: limit.si, default=None)
    never = f" {phrases.never_above(show_quantity(most))}." if most else ""
    return f"{phrases.held(', '.join(held))}.{never}" if held else never.strip()
