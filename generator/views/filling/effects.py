"""What a wrong number does to an answer, and what the wrong sum gives, in sentences."""

from collections.abc import Iterator, Mapping
from itertools import groupby
from typing import Any

from generator.formulas import Formula, FormulaError
from generator.formulas.sensitivity import Shift, sensitivity
from generator.units import Quantity, show_number
from generator.views.filling.words import named

# A wrong sum that is this many per cent out, or more, is told as a multiple.
_MULTIPLE = 200


def effect_sentences(formula: Formula, values: Mapping[str, Any]) -> Iterator[str]:
    """One sentence an input: "Area 10 % low gives 4.5 A instead of 5.0 A, 10 % high gives 5.5 A.".

    None for an input that leaves the answer as it is shown.
    """
    try:
        shifts = sensitivity(formula, values)
    except FormulaError:
        return
    for name, found in groupby(shifts, key=lambda shift: shift.name):
        moved = tuple(found)
        right = formula.answer.show(moved[0].right)
        shown = [(_how_far(shift), formula.answer.show(shift.answer)) for shift in moved]
        if any(answer != right for _, answer in shown):
            yield _sentence(name, shown, right)


def _sentence(name: str, shown: list[tuple[str, str]], right: str) -> str:
    (far, answer), *others = shown
    parts = [f"{far} gives {answer} instead of {right}", *(f"{far} gives {answer}" for far, answer in others)]
    return f"{named(name)} {', '.join(parts)}."


def _how_far(shift: Shift) -> str:
    if shift.part is not None:
        return f"{abs(shift.part) * 100:.0f}\u00a0% {'low' if shift.part < 0 else 'high'}"
    degrees = shift.degrees or 0.0
    return f"{abs(degrees):.0f} degrees {'low' if degrees < 0 else 'high'}"


def naive_sentence(formula: Formula, values: Mapping[str, Any]) -> str:
    """The wrong sum beside the right one, or nothing where none is told."""
    try:
        right, wrong = formula.evaluate(values), formula.evaluate_naive(values)
    except (FormulaError, ArithmeticError):
        return ""
    if wrong is None or formula.naive is None:
        return ""
    shown = formula.answer.show(wrong)
    far = "" if formula.answer.clock else _how_wrong(right, wrong)
    return f"A sum that forgets {formula.naive.forgets} gives {shown}{far}."


def _how_wrong(right: Quantity, wrong: Quantity) -> str:
    """ ", 3 % low", ", 10 times the right one", or nothing where the right one is nothing."""
    if not right.number:
        return ""
    part = 100 * (wrong.number - right.number) / right.number
    if abs(part) >= _MULTIPLE and part > 0:
        return f", {show_number(wrong.number / right.number, digits=2)} times the right one"
    if abs(part) < 1:
        return ", less than 1\u00a0% away" if part else ", the same here"
    return f", {abs(part):.0f}\u00a0% too {'low' if part < 0 else 'high'}"
