"""The answer of a formula against one of its inputs, as the points and marks of a small chart.

The page's script draws the same chart again when a number changes, by the same rules.
"""

import math
from collections.abc import Iterator, Mapping
from typing import Any

from generator.formulas import Formula, FormulaError, Input
from generator.units import Clock, Quantity, Window, show_number, show_unit
from generator.views.calculator import AxisView, ChartView
from generator.views.filling.answers import answer_words
from generator.views.filling.boxes import Ranges
from generator.views.filling.words import low, named

POINTS = 40
_STEPS = (1.0, 2.0, 5.0, 10.0)
_CLOCK_STEPS = (1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 120.0, 240.0, 480.0)


def chart_view(formula: Formula, values: Mapping[str, Any], ranges: Ranges) -> ChartView | None:
    """Against the first quantity that moves the answer; None where no single quantity does."""
    charts = (
        _chart(formula, values, ranges, each)
        for each in formula.inputs
        if isinstance(each, Input) and isinstance(values.get(each.name), Quantity)
    )
    return next((chart for chart in charts if chart), None)


def _chart(formula: Formula, values: Mapping[str, Any], ranges: Ranges, each: Input) -> ChartView | None:
    at = values[each.name]
    left, right = _reach(at, ranges.usual.get(each.name) or each.usual_window)
    numbers = _numbers(left, right, each.whole)
    points = tuple(
        (number, _answer(formula, values, each.name, Quantity(number, at.unit))) for number in numbers
    )
    found = [y for _, y in points if y is not None]
    here = _answer(formula, values, each.name, at)
    if here is None or len(found) < 2 or not _differ(found):
        return None
    clock = formula.answer.clock
    y = _axis(answer_words(formula, values), *_span([*found, here], clock), clock, closed=True)
    x = _axis(_label(named(each.name), "" if each.clock else at.unit), left, right, each.clock)
    words = f"{formula.answer.means} against {low(named(each.name))}"
    return ChartView(each.name, x, y, points, (at.number, here), words[:1].upper() + words[1:])


def _differ(found: list[float]) -> bool:
    return max(found) - min(found) > 1e-9 * max(abs(min(found)), abs(max(found)))


def _reach(at: Quantity, usual: Window | None) -> tuple[float, float]:
    """What is usual and the value itself, in its unit; without a range, half of it to half as much again."""
    if usual and usual.low and usual.high and usual.dimension == at.dimension:
        left, right = usual.low.to(at.unit).number, usual.high.to(at.unit).number
    else:
        left, right = (
            (at.number * 0.5, at.number * 1.5) if at.number > 0 else (at.number * 1.5, at.number * 0.5)
        )
    left, right = min(left, at.number), max(right, at.number)
    return (left, right) if left < right else (left, left + 1)


def _numbers(left: float, right: float, whole: bool) -> Iterator[float]:
    if whole:
        step = max(1.0, float(math.ceil((right - left) / POINTS)))
        count = math.floor((right - left) / step)
        return (left + step * n for n in range(count + 1))
    return (left + (right - left) * n / POINTS for n in range(POINTS + 1))


def _answer(formula: Formula, values: Mapping[str, Any], name: str, value: Quantity) -> float | None:
    try:
        return formula.evaluate({**values, name: value}).number
    except FormulaError:
        return None


def _span(found: list[float], clock: bool) -> tuple[float, float]:
    """From the least to the most; from nothing where the most is more than twice the least."""
    least, most = min(found), max(found)
    return (0.0, most) if 0 < least < most / 2 and not clock else (least, most)


def _axis(label: str, left: float, right: float, clock: bool, closed: bool = False) -> AxisView:
    """Marks at round numbers; `closed` ends the axis on marks."""
    step = _step((right - left) / 4, clock)
    first, last = left / step, right / step
    if closed:
        low_mark, high_mark = math.floor(first + 1e-9), math.ceil(last - 1e-9)
        left, right = low_mark * step, high_mark * step
    else:
        low_mark, high_mark = math.ceil(first - 1e-9), math.floor(last + 1e-9)
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    marks = tuple((n * step, _mark(n * step, decimals, clock)) for n in range(low_mark, high_mark + 1))
    return AxisView(label, left, right, marks)


def _mark(number: float, decimals: int, clock: bool) -> str:
    return str(Clock(int(number))) if clock and 0 <= number <= 1440 else show_number(number, decimals)


def _step(least: float, clock: bool) -> float:
    if clock:
        return next((step for step in _CLOCK_STEPS if step >= least), _CLOCK_STEPS[-1])
    power = float(f"1e{_power(least)}")
    return next(step * power for step in _STEPS if step * power >= least * (1 - 1e-9))


def _label(words: str, unit: str) -> str:
    return f"{words}, {show_unit(unit)}" if unit else words


def _power(number: float) -> int:
    """Of ten; read off the number's text, which a page writes alike, where a logarithm may fall short."""
    return int(f"{number:.16e}".partition("e")[2])
