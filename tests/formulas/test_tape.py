"""Functions recorded on a tape: what is written down, what is refused, by name and line."""

import math
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given as hypothesis_given
from hypothesis import strategies as st

from generator.formulas import Answer, Formula, FormulaError, Input, Rows, Sizes
from generator.formulas.constants import METAL
from generator.formulas.evaluate import Givens, evaluate
from generator.formulas.words import (
    choose,
    exp,
    larger,
    log,
    nearest,
    next_size_up,
    pi,
    product,
    smaller,
    smallest,
    sqrt,
    total,
    whole_down,
    whole_up,
)

A = Input("a", "a", "first length", "mm")
B = Input("b", "b", "second length", "mm")
T = Input("t", "t", "a time", "min")
N = Input("n", "n", "a number", "")
HOLES = Rows(
    "holes", "holes", "holes", (Input("count", "n", "count", ""), Input("drill", "d", "drill", "mm"))
)
DRILLS = Sizes("drills", "s", "drills in stock", "mm")
INPUTS = (A, B, T, N, HOLES, DRILLS, METAL)


def formula(function: Callable[..., Any], unit: str = "") -> Formula:
    return Formula("trial", "Trial", "", INPUTS, Answer("x", "answer", unit), "", function)


def value(function: Callable[..., Any], **quantities: float) -> float:
    holes = ({"count": 2.0, "drill": 0.5}, {"count": 3.0, "drill": 0.25})
    givens = Givens(quantities, {"holes": holes}, {"drills": (0.9, 0.8, 0.85)}, {})
    return evaluate(formula(function).tape, givens)


def test_each_word() -> None:
    assert value(lambda n: (n + 1) * 3 - 4 / n, n=2.0) == 7
    assert value(lambda n: -(n**2) + n**3 - n**4, n=2.0) == -4 + 8 - 16
    assert value(lambda n: sqrt(n) + exp(n * 0) + log(n / n), n=9.0) == 4
    assert value(lambda n: larger(n, 3) + smaller(n, 3), n=7.0) == 10
    assert value(lambda n: choose(n < 5, 1, 2), n=4.0) == 1
    assert value(lambda n: choose(n >= 5, 1, 2), n=4.0) == 2
    assert value(lambda n: product(1, n, lambda i: i * 2), n=3.0) == 48
    assert value(lambda n: product(5, n, lambda i: i), n=3.0) == 1
    assert value(lambda n: smallest(1, 100, lambda i: i * i > n), n=50.0) == 8
    assert math.isnan(value(lambda n: product(n, n, lambda i: i), n=1e300))
    assert math.isnan(value(lambda n: smallest(1, 5, lambda i: i * i > n), n=50.0))
    assert value(lambda holes: total(holes, lambda row: row.count * row.drill / row.drill)) == 5
    assert value(lambda n: 2 * pi * n, n=1.0) == 2 * math.pi


@pytest.mark.parametrize(
    ("number", "up", "down", "near"),
    [
        (2.0, 2, 2, 2),
        (2.1, 3, 2, 2),
        (2.5, 3, 2, 3),
        (3.5, 4, 3, 4),
        (-2.5, -2, -3, -3),
        (-0.4, 0, -1, 0),
        (0.3 / 0.1, 3, 3, 3),
        (0.1 * 3 / 0.1, 3, 3, 3),
        (0.49999999999999994, 1, 0, 0),
        (1e15 + 0.5, 1e15 + 1, 1e15, 1e15 + 1),
    ],
)
def test_whole_numbers(number: float, up: float, down: float, near: float) -> None:
    assert value(lambda n: whole_up(n), n=number) == up
    assert value(lambda n: whole_down(n), n=number) == down
    assert value(lambda n: nearest(n), n=number) == near


def test_stock_sizes() -> None:
    def next_drill(a: Any, drills: Any) -> Any:
        return next_size_up(a, drills)

    def found(wanted: float) -> float:
        stock = Givens({"a": wanted}, {}, {"drills": (0.9, 0.8, 0.85)})
        return evaluate(formula(next_drill, "mm").tape, stock)

    assert found(0.8 + 2 * 0.05) == 0.9
    assert found(0.8000001) == 0.85
    assert found(0.5) == 0.8
    assert math.isnan(found(0.91))


@hypothesis_given(
    st.floats(allow_nan=True, allow_infinity=True), st.floats(allow_nan=True, allow_infinity=True)
)
def test_nothing_raises_on_any_double(a: float, b: float) -> None:
    def all_words(n: Any, m: Any) -> Any:
        return (
            sqrt(n) + log(m) / exp(n) + nearest(n, m) + whole_up(n / m) - n**4 + choose(n < m, n / m, m / n)
        )

    numbers = (N, Input("m", "m", "another", ""))
    tape = Formula("trial", "", "", numbers, Answer("x", "", ""), "", all_words).tape
    assert isinstance(evaluate(tape, Givens({"n": a, "m": b})), float)


def _if(n: Any) -> Any:
    if n > 1:
        return n
    return 1


def _if_else(n: Any) -> Any:
    return n if n > 1 else 1


def _while(n: Any) -> Any:
    while n > 1:
        n = n - 1
    return n


def _and(n: Any) -> Any:
    return choose(n > 1 and n < 3, 1, 2)


def _or(n: Any) -> Any:
    return choose(n > 1 or n < 3, 1, 2)


def _not(n: Any) -> Any:
    return not n


def _for(n: Any) -> Any:
    for each in n:
        n = each
    return n


def _for_rows(holes: Any) -> Any:
    return total(holes, lambda row: next(iter(row.count)))


REFUSED: list[tuple[Callable[..., Any], str, str]] = [
    (_if, "`if` cannot be recorded", "write choose(condition, this, that)"),
    (_if_else, "`if` cannot be recorded", "write choose(condition, this, that)"),
    (_while, "`while` cannot be recorded", "write smallest(low, high, condition)"),
    (_and, "`and` cannot be recorded", "write one choose inside another"),
    (_or, "`or` cannot be recorded", "write one choose inside another"),
    (_not, "`not` cannot be recorded", "turn the comparison round"),
    (_for, "`for` over a quantity cannot be recorded", "write total(rows, lambda row: ...)"),
    (_for_rows, "`for` over a quantity cannot be recorded", "write total(rows, lambda row: ...)"),
    (lambda n: max(n, 1), "`max` cannot be recorded", "write larger(a, b)"),
    (lambda n: min(1, n), "`min` cannot be recorded", "write smaller(a, b)"),
    (lambda n: sum([n, n]), "`sum` cannot be recorded", "write total(rows, lambda row: ...)"),
    (lambda holes: sum(row.drill for row in holes), "`for` over a quantity cannot be recorded", ""),
    (lambda n: math.sqrt(n), "`math.sqrt` cannot be recorded", "write sqrt(x)"),
    (lambda n: math.tanh(n), "`math.tanh` cannot be recorded", "use the words of generator.formulas.words"),
    (lambda n: round(n), "`round` cannot be recorded", "write nearest(value, step)"),
    (lambda n: round(n, 2), "`round` cannot be recorded", "write nearest(value, step)"),
    (lambda n: abs(n), "`abs` cannot be recorded", "write larger(x, -x)"),
    (lambda n: int(n), "`int` cannot be recorded", "write whole_down or whole_up"),
    (lambda n: float(n), "`float` cannot be recorded", "leave the quantity as it is"),
    (lambda n: len(n), "`len` cannot be recorded", "give the number as an input of its own"),
    (lambda n: range(n), "`range` cannot be recorded", ""),
    (lambda n: n == 1, "`==` cannot be recorded", "compare with < or >"),
    (lambda n: n != 1, "`!=` cannot be recorded", "compare with < or >"),
    (lambda n: n // 2, "`//` cannot be recorded", "write whole_down(a / b)"),
    (lambda n: 7 // n, "`//` cannot be recorded", "write whole_down(a / b)"),
    (lambda n: n % 2, "`%` cannot be recorded", "write a - b * whole_down(a / b)"),
    (lambda n: n**0.5, "a power other than 2, 3 or 4 cannot be recorded", "write sqrt, or a product"),
    (lambda n: n**5, "a power other than 2, 3 or 4 cannot be recorded", "write sqrt, or a product"),
    (lambda n: n**n, "a power other than 2, 3 or 4 cannot be recorded", "write sqrt, or a product"),
    (lambda n: 2**n, "a power with a quantity above cannot be recorded", "write exp(x)"),
    (
        lambda holes: total(holes, lambda row: row.depth),
        "`holes` has no column `depth`",
        "use one of: count, drill",
    ),
    (
        lambda metal: metal.colour,
        "`metal` has no field `colour`",
        "use one of: molar_mass, density, charges",
    ),
    (lambda n: n.drill, "`.drill` of a quantity cannot be recorded", "name an input, or a column of a row"),
    (lambda holes: holes * 2, "`holes` is a list, and a list is no number", "write total(rows, ...)"),
    (lambda n: total(n, lambda row: row.x), "total is asked of something that is no list of rows", ""),
    (lambda n: choose(n, 1, 2), "a comparison is expected here", "write a < b, a <= b, a > b or a >= b"),
    (lambda n: str(type(n)), "a str is no quantity", "use inputs, numbers and words only"),
    (lambda n: [n], "a list is no quantity", "use inputs, numbers and words only"),
    (lambda n: product(1, n, lambda i: product(1, n, lambda j: i * j)), "a range inside a range", ""),
]


@pytest.mark.parametrize(("function", "what", "fix"), REFUSED, ids=range(len(REFUSED)))
def test_what_cannot_be_recorded_is_named(function: Callable[..., Any], what: str, fix: str) -> None:
    with pytest.raises(FormulaError) as caught:
        _ = formula(function).tape
    error = caught.value
    assert error.what.startswith(what)
    assert error.fix.startswith(fix)
    first = function.__code__.co_firstlineno
    assert first <= error.line <= first + 4
    assert str(error).startswith(f"trial, line {error.line}: ")


DIMENSIONS: list[tuple[Callable[..., Any], str, str]] = [
    (lambda a, t: a + t, "", "a length is added to a time"),
    (lambda a, t: a - t, "", "a time is taken from a length"),
    (lambda a, t: choose(a < t, 1, 2), "", "a length is compared with a time"),
    (lambda a, t: larger(a, t), "", "a length is compared with a time"),
    (lambda a, n: a + n, "", "a length is added to a plain number"),
    (lambda a: a + 1, "", "a length is added to a plain number"),
    (lambda a: exp(a), "", "exp of a length"),
    (lambda a: sqrt(a), "", "sqrt of a length"),
    (lambda a: whole_up(a), "", "whole_up of a length"),
    (lambda a, t: nearest(a, t), "mm", "a length is rounded in steps of a time"),
    (lambda t, drills: next_size_up(t, drills), "mm", "time is looked up in a list of length"),
    (lambda a, b: a * b, "mm", "the answer comes out as area, and mm is length"),
    (lambda a, t: a / t, "", "the answer comes out as speed, and  is plain number"),
]


@pytest.mark.parametrize(("function", "unit", "what"), DIMENSIONS, ids=range(len(DIMENSIONS)))
def test_dimensions_are_held_against_each_other(function: Callable[..., Any], unit: str, what: str) -> None:
    with pytest.raises(FormulaError) as caught:
        _ = formula(function, unit).tape
    assert caught.value.what == what
    assert caught.value.line == function.__code__.co_firstlineno


def test_nothing_goes_with_any_dimension() -> None:
    assert formula(lambda a: larger(a, 0), "mm").tape.answer.dimension.name == "length"
    assert formula(lambda a: larger(0, a), "mm").tape.answer.dimension.name == "length"


def test_an_unknown_input_is_named() -> None:
    with pytest.raises(FormulaError, match="`depth` is no input of the formula"):
        _ = formula(lambda depth: depth).tape


def test_what_is_shared_is_worked_out_once() -> None:
    def doubled(n: Any) -> Any:
        for _ in range(60):
            n = n + n
        return n

    tape = formula(doubled).tape
    assert evaluate(tape, Givens({"n": 1.0})) == 2.0**60
    assert tape.uses("n") == 2**60
    assert tape.size == 2**61 - 1
    assert tape.depth == 61
