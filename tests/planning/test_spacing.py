"""How far apart runs may start: worked by hand, tried second by second, and on the demo's own run."""

from math import ceil

import pytest

from generator.planning import (
    HANDS,
    Busy,
    PlannedRun,
    Pointer,
    bottleneck,
    clear_spacing,
    load_of,
    parts_within,
    series_spacing,
)
from tests.planning.small_runs import clashes, small_run

MINUTE = 60.0


def run_of(*busy: tuple[str, float, float], **room: int) -> PlannedRun:
    """A run of one block from what is busy in minutes."""
    spans = tuple(Busy(what, Pointer(0, low * MINUTE), Pointer(0, high * MINUTE)) for what, low, high in busy)
    return PlannedRun("run", (max(high for _, _, high in busy) * MINUTE,), (), spans, room=room)


def test_one_place_sets_the_pace() -> None:
    """In at 10, out at 30, hands 2 min at both ends: 20 min in the bath, 9 min of hands."""
    run = run_of((HANDS, 0, 5), (HANDS, 8, 10), ("bath", 8, 30), (HANDS, 28, 30))
    assert bottleneck(run) == ("bath", 22 * MINUTE)
    assert clear_spacing(run, 2) == 22 == series_spacing(run)
    assert parts_within(run, 74 * MINUTE) == (3, 22)
    assert parts_within(run, 73 * MINUTE) == (2, 22)
    assert parts_within(run, 29 * MINUTE) == (0, 0)


def test_room_for_two_halves_the_pace_until_the_hands_clash() -> None:
    """With room for two the hands decide: 0-5, 8-10 and 28-30 must not meet themselves some minutes later.

    By 5 to 9 min later 0-5 becomes 5-10 to 9-14 and meets 8-10; 10 min later 10-15, 18-20, 38-40 are free.
    """
    run = run_of((HANDS, 0, 5), (HANDS, 8, 10), ("bath", 8, 30), (HANDS, 28, 30), bath=2)
    assert clear_spacing(run, 2) == 10
    assert load_of(run, "bath") == 11 * MINUTE
    assert clear_spacing(run, 3) == 11
    assert series_spacing(run) == 11


def test_operators_take_turns() -> None:
    """All hands for 10 min: one operator every 10 min, two every 5, and a place of 6 min keeps them to 6."""
    run = run_of((HANDS, 0, 10), ("sink", 2, 8))
    assert [series_spacing(run, operators) for operators in (1, 2, 3)] == [10, 6, 6]
    assert bottleneck(run, 1) == (HANDS, 10 * MINUTE)
    assert bottleneck(run, 2) == ("sink", 6 * MINUTE)


@pytest.mark.parametrize("operators", [1, 2, 3])
@pytest.mark.parametrize("parts", [2, 3, 4])
def test_the_scan_finds_what_trying_everything_finds(parts: int, operators: int) -> None:
    """Times are half minutes; every whole minute is tried from the first."""
    for seed in range(60):
        run = small_run(seed, unit=30.0)
        last = max(ceil(run.seconds / MINUTE), 1)
        tried = next(
            (
                minutes
                for minutes in range(1, last)
                if not all(
                    clashes([(run, n * minutes * 2, n % turns) for n in range(parts)], 30.0)
                    for turns in range(1, operators + 1)
                )
            ),
            last,
        )
        assert clear_spacing(run, parts, operators) == tried, run


@pytest.mark.parametrize("operators", [1, 2])
def test_a_series_never_clashes_however_long(operators: int) -> None:
    for seed in range(60):
        run = small_run(seed, blocks=4, unit=30.0)
        spacing = series_spacing(run, operators)
        assert not all(
            clashes([(run, n * spacing * 2, n % turns) for n in range(12)], 30.0)
            for turns in range(1, operators + 1)
        )


def test_a_run_that_takes_no_time_can_start_every_minute() -> None:
    run = PlannedRun("empty", (0.0,), (), ())
    assert clear_spacing(run, 2) == 1 and bottleneck(run) == ("", 0.0)
