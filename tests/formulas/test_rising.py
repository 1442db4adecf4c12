"""The smallest number is found by halving where nothing can be skipped, and one by one everywhere else."""

import math
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.formulas import Answer, Formula, Input
from generator.formulas.evaluate import MOST_STEPS, Givens, evaluate
from generator.formulas.rising import stays_true
from generator.formulas.tape import Smallest
from generator.formulas.words import choose, smallest

N = Input("n", "n", "a number", "")
HIGH = Input("high", "h", "the last number", "")
# A condition is written for entries of a tape and for plain numbers; `choose` is handed to it.
Condition = Callable[[Any, Any, Any], Any]

RISING: tuple[Condition, ...] = (
    lambda i, n, _: i >= n,
    lambda i, n, _: i * i > n,
    lambda i, n, _: 0.1 + i * (0.3 + i * (1 + i)) >= n * n,
    lambda i, n, choose: choose(n > 40, 1 + i * 7, i + i) >= n,
    lambda i, n, _: i * 0 >= n,
)
OTHERS: tuple[Condition, ...] = (
    lambda i, n, _: i <= n,
    lambda i, n, _: i >= n * i,
    lambda i, n, _: i - 30 >= n,
    lambda i, n, _: (i - 7) * (i - 7) >= n,
    lambda i, n, _: 50 / i >= n,
    lambda i, n, choose: choose(i > 20, 1, 60) >= n,
    lambda i, n, _: i * -1 >= n,
    lambda i, n, _: n + i >= 5,
)


def searching(condition: Condition) -> Formula:
    def trial(n: Any, high: Any) -> Any:
        return smallest(1, high, lambda i: condition(i, n, choose))

    return Formula("trial", "Trial", "", (N, HIGH), Answer("x", "answer", ""), "", trial)


def seen(formula: Formula) -> bool:
    answer = formula.tape.answer
    assert isinstance(answer, Smallest)
    return stays_true(answer.condition, answer.index)


@pytest.mark.parametrize("condition", RISING)
def test_what_never_falls_is_seen(condition: Condition) -> None:
    assert seen(searching(condition))


@pytest.mark.parametrize("condition", OTHERS)
def test_what_may_fall_is_not_taken_for_it(condition: Condition) -> None:
    """`n + i` does not fall either, but an input may be negative, and then a product would."""
    assert not seen(searching(condition))


def plain_choose(condition: bool, this: float, that: float) -> float:
    return this if condition else that


def one_by_one(condition: Condition, n: float, high: float) -> float:
    number = 1.0
    while number <= high and high - 1 < MOST_STEPS:
        if condition(number, n, plain_choose):
            return number
        number += 1
    return math.nan


@given(
    st.sampled_from([*RISING, *OTHERS]),
    st.floats(-5, 3000, allow_nan=False) | st.sampled_from([0.0, 1.0, 49.0, 50.0, 51.0, 1e12]),
    st.floats(-3, 300, allow_nan=False) | st.sampled_from([0.0, 1.0, 1.5, 9_999.0, 10_001.0, 2e9]),
)
def test_halving_finds_what_counting_finds(condition: Condition, n: float, high: float) -> None:
    found = evaluate(searching(condition).tape, Givens({"n": n, "high": high}, {}, {}, {}))
    counted = one_by_one(condition, n, high)
    assert found == counted or (math.isnan(found) and math.isnan(counted))
