"""What a lab never lets a formula pass: a number that goes in, or the answer that comes out."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from generator.formulas import Formula
from generator.model import CalculatorSettings, Number
from generator.units import Quantity, Window


@dataclass(frozen=True, slots=True)
class Passed:
    """A limit of the lab that is passed: by which input, or by the answer ("")."""

    name: str
    value: Quantity
    limit: Quantity


def names_answer(formula: Formula, name: str) -> bool:
    """Whether a name in `never_above` means the answer: `answer`, or what the formula calls it."""
    answer = formula.answer
    own = {"answer", formula.name, answer.symbol, answer.means.replace(" ", "_").replace("-", "_")}
    return formula.input(name) is None and name in own


def answer_limit(formula: Formula, settings: CalculatorSettings | None) -> Quantity | None:
    """What the lab says that the answer never passes."""
    if settings is None:
        return None
    limits = (_quantity(v) for name, v in settings.never_above.items() if names_answer(formula, str(name)))
    return next((limit for limit in limits if limit is not None), None)


def passed_limits(
    formula: Formula,
    values: Mapping[str, Any],
    answer: Quantity | None,
    settings: CalculatorSettings | None,
) -> Iterator[Passed]:
    """Every limit of the lab that a value or the answer passes; a row counts by its columns."""
    for name, given in settings.never_above.items() if settings else ():
        limit = _quantity(given)
        if limit is None:
            continue
        if names_answer(formula, str(name)):
            found = [answer] if answer else []
        else:
            found = list(_values(values, str(name)))
        yield from (
            Passed("" if found == [answer] else str(name), value, limit)
            for value in found
            if value.dimension == limit.dimension and not Window(None, limit).contains(value)
        )


def _values(values: Mapping[str, Any], name: str) -> Iterator[Quantity]:
    for own, value in values.items():
        rows = value if isinstance(value, tuple | list) else ()
        cells = [row.get(name) for row in rows if isinstance(row, Mapping)]
        for each in [value] if own == name else cells:
            quantity = _quantity(each)
            if quantity is not None:
                yield quantity


def _quantity(value: Any) -> Quantity | None:
    match value:
        case Quantity():
            return value
        case Number():
            return Quantity(value.value, "")
        case int() | float():
            return Quantity(float(value), "")
    return None
