"""Random values for a formula's inputs, inside their hard ranges, in coherent SI."""

import math
import random
from typing import Any

from generator.formulas import AnyInput, Choice, Formula, Input, Rows, Sizes
from generator.formulas.evaluate import Givens
from generator.formulas.settling import bounds
from generator.units import read_quantity


def random_givens(formula: Formula, dice: random.Random) -> Givens:
    """Return values for every input, some of them on the edge of the range."""
    values = {each.name: random_value(each, dice) for each in formula.inputs}

    def of(kind: type) -> dict[str, Any]:
        return {each.name: values[each.name] for each in formula.inputs if isinstance(each, kind)}

    return Givens(of(Input), of(Rows), of(Sizes), of(Choice))


def random_value(each: AnyInput, dice: random.Random) -> Any:
    """Return one value: a number, rows, sizes or a record."""
    match each:
        case Rows():
            return tuple({c.name: _number(c, dice) for c in each.columns} for _ in range(dice.randint(0, 6)))
        case Sizes():
            sizes = [read_quantity(text).si for text in each.default] or [
                dice.uniform(0, 1) for _ in range(5)
            ]
            dice.shuffle(sizes)
            return tuple(sizes)
        case Choice():
            return dict(each.table.record(dice.choice(each.table.rows).name) or {})
        case Input():
            return _number(each, dice)


def _number(each: Input, dice: random.Random) -> float:
    low, high = bounds(each)
    low, high = (0.0 if low is None else low), (1e6 if high is None else high)
    if dice.random() < 0.05:
        value = dice.choice((low, high))
    elif low > 0:
        value = math.exp(dice.uniform(math.log(low), math.log(high)))
    else:
        value = dice.uniform(low, high) * dice.choice((1.0, 1e-3))
    return float(round(min(value, 1000.0))) if each.whole else min(max(value, low), high)


def as_page_data(givens: Givens) -> dict[str, Any]:
    """Return the same values as a formula takes them on the page."""
    return {**givens.quantities, **givens.rows, **givens.sizes, **givens.records}
