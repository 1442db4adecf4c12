"""The solver against trying everything, on runs small enough for it."""

import builtins
from itertools import product
from typing import Any

import pytest

from generator.planning import HANDS, Busy, PlannedRun, Pointer, Rest, Since, plan_parts, smallest_cycle
from generator.problems import NewelError
from tests.planning.small_runs import clashes, drawn_out, small_run


def shortest_by_trying(runs: list[PlannedRun], operators: int) -> int:
    """The earliest end of the last run, over all waits, starts and operators."""
    best = sum(round(run.seconds) for run in runs)
    for forms in product(*map(drawn_out, runs)):
        for starts in product(range(best), repeat=len(runs)):
            end = max(start + round(run.seconds) for run, start in zip(forms, starts, strict=True))
            if end >= best:
                continue
            for who in product(range(operators), repeat=len(runs)):
                if not clashes(list(zip(forms, starts, who, strict=True))):
                    best = end
    return best


@pytest.mark.parametrize("operators", [1, 2])
@pytest.mark.parametrize("seed", range(6))
def test_two_different_runs_end_as_early_as_can_be(seed: int, operators: int) -> None:
    runs = [small_run(2 * seed, blocks=2), small_run(2 * seed + 1, blocks=2)]
    # One room for each place, as in one lab.
    runs = [PlannedRun(run.name, run.blocks, run.rests, run.busy, room={"oven": 1}) for run in runs]
    found = plan_parts(runs, operators)
    assert found is not None and found.proven
    assert found.end == shortest_by_trying(runs, operators)


def cycle_by_trying(run: PlannedRun) -> int:
    """The smallest cycle at which twelve parts after one another never clash, over all waits."""
    for cycle in range(1, round(run.seconds) + 1):
        if any(not clashes([(form, n * cycle, 0) for n in range(12)]) for form in drawn_out(run)):
            return cycle
    return round(run.seconds)


@pytest.mark.parametrize("seed", range(12))
def test_the_smallest_cycle_is_that_of_trying_everything(seed: int) -> None:
    made = small_run(seed, blocks=3)
    run = PlannedRun(made.name, made.blocks, made.rests, made.busy, room={"oven": 1})
    found = smallest_cycle(run)
    assert found is not None and found.proven
    assert found.seconds == cycle_by_trying(run)


def test_a_clock_that_runs_out_is_kept() -> None:
    """Hands 10 s, wait, hands 10 s, twice: 40 s; where a clock asks for 25 s between, 55 s."""
    busy = (
        Busy(HANDS, Pointer(0, 0), Pointer(0, 10)),
        Busy(HANDS, Pointer(1, 0), Pointer(1, 10)),
    )
    free = PlannedRun("free", (10.0, 10.0), (Rest(0, 0, 30),), busy)
    tight = PlannedRun("tight", free.blocks, free.rests, busy, (Since(Pointer(0, 10), Pointer(1, 0), 0, 5),))
    waiting = PlannedRun(
        "late", free.blocks, free.rests, busy, (Since(Pointer(0, 10), Pointer(1, 0), 25, None),)
    )
    plans = [plan_parts([run, run]) for run in (free, tight, waiting)]
    assert [plan and plan.end for plan in plans] == [40, 40, 55]


def test_without_the_solver_the_reason_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    real = builtins.__import__

    def refuse(name: str, *rest: Any, **more: Any) -> Any:
        if name.startswith("ortools"):
            raise ImportError(name)
        return real(name, *rest, **more)

    monkeypatch.setattr(builtins, "__import__", refuse)
    with pytest.raises(NewelError, match="solver") as caught:
        plan_parts([small_run(1)])
    assert "newel[planning]" in caught.value.hint
