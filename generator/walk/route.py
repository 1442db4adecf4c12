"""The order of visits: the straight run with its repeats, and what a failed check adds."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import NamedTuple

from generator.model import Fail, Procedure, Stage, Step

MOST_PASSES = 3
MOST_REDOS = 5


class Visit(NamedTuple):
    """One coming to a step; `times` stretches its time where a repeat is walked less often than done."""

    step: Step
    stage: Stage
    times: float = 1.0
    mends: str = ""


@dataclass(frozen=True, slots=True)
class Redo:
    """A check that may fail at visit `at`: the mend, then again from visit `to`, at most so often."""

    at: int
    to: int
    most: int
    mend: Visit | None


def straight_run(procedure: Procedure) -> tuple[Visit, ...]:
    """All visits of the run without a fault; a repeated stage is walked three times at most."""
    return tuple(visit for stage in procedure.stages for visit in _stage(stage))


def _stage(stage: Stage) -> Iterator[Visit]:
    count = max(stage.repeat.number, 1) if stage.repeat else 1
    passes = min(count, MOST_PASSES)
    for turn in range(passes):
        times = float(count - passes + 1 if turn == passes - 1 else 1)
        for step in stage.steps:
            yield Visit(step, stage, times * (step.repeat.number if step.repeat else 1))


def redos(visits: tuple[Visit, ...]) -> tuple[Redo, ...]:
    """Every check that says what to do again; a target that is not before it is left to the rules."""
    found = (_redo(visits, index) for index in range(len(visits)))
    return tuple(redo for redo in found if redo)


def _redo(visits: tuple[Visit, ...], index: int) -> Redo | None:
    visit = visits[index]
    fail = visit.step.fail
    if fail is None or not goes_on(fail):
        return None
    target = str(fail.redo or visit.step.id)
    earlier = [i for i in range(index, -1, -1) if visits[i].step.id == target]
    if not earlier:
        return None
    mend = Visit(fail.mend, visit.stage, 1.0, str(visit.step.id)) if fail.mend else None
    return Redo(index, earlier[0], min(fail.at_most or 1, MOST_REDOS), mend)


def goes_on(fail: Fail) -> bool:
    """Whether work goes on after the failed check without anybody being called."""
    return fail.redo is not None or fail.mend is not None


def all_once(visits: tuple[Visit, ...], found: tuple[Redo, ...], most: int) -> tuple[Visit, ...]:
    """One run in which every check fails once."""
    waiting = {redo.at: redo for redo in found}
    out: list[Visit] = []
    index = 0
    while index < len(visits) and len(out) < most:
        out.append(visits[index])
        redo = waiting.pop(index, None)
        if redo:
            out += [redo.mend] if redo.mend else []
            index = redo.to
        else:
            index += 1
    return tuple(out)
