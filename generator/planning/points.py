"""From where work must go on: each stage that cannot be left half-way, and how long it then takes."""

from collections.abc import Iterator
from dataclasses import dataclass

from generator.model import Step
from generator.walk import Ground, Moment, Walk


@dataclass(frozen=True, slots=True)
class PointOfNoReturn:
    """The first step of a stage that has to be carried on: seconds to the next pause, and to the end.

    `at` is its place in the straight run. `pause` is the step behind which work may stop, "" where it is the
    end; `to_end` is None where a pause has to be taken before, and the end is reached on another day.
    """

    stage: str
    step: str
    at: int
    to_pause: float
    pause: str
    to_end: float | None


def points_of_no_return(ground: Ground, walk: Walk) -> tuple[PointOfNoReturn, ...]:
    """Every stage, or part of a stage behind a pause, in which something begins that cannot wait."""
    return tuple(_point(walk.straight, index) for index in _entries(ground, walk.straight))


def _entries(ground: Ground, run: tuple[Moment, ...]) -> Iterator[int]:
    """Where a stage begins, or goes on behind a pause, before the first of its steps that cannot be left."""
    clocked = {str(step.since.step) for step in ground.procedure.steps if step.since and step.since.time.high}
    entry, told = 0, False
    for index, moment in enumerate(run):
        before = run[index - 1] if index else None
        if before is None or before.stage is not moment.stage or before.step.pause is not None:
            entry, told = index, False
        if not told and _begins(ground, moment.step, clocked):
            told = True
            yield entry


def _begins(ground: Ground, step: Step, clocked: set[str]) -> bool:
    """A bath, a window, a current, a mixture that sets, or a clock: once begun it has to be ended."""
    place = ground.place(step)
    if step.do == "put-in" and place is not None and (place.holds is not None or place.time is not None):
        return True
    made = ground.lab.mixtures.get(step.into) if step.into and step.do in ("mix", "add") else None
    sets = made is not None and made.use_within is not None
    return sets or step.power is not None or str(step.id) in clocked


def _point(run: tuple[Moment, ...], entry: int) -> PointOfNoReturn:
    first = run[entry]
    stop = next(
        (index for index in range(entry, len(run)) if run[index].step.pause is not None), len(run) - 1
    )
    must = any(pause and pause.time.low for pause in (moment.step.pause for moment in run[entry:-1]))
    return PointOfNoReturn(
        str(first.stage.title),
        str(first.step.id),
        entry,
        _seconds(run[entry : stop + 1]),
        str(run[stop].step.id) if run[stop].step.pause is not None and stop + 1 < len(run) else "",
        None if must else _seconds(run[entry:]),
    )


def _seconds(moments: tuple[Moment, ...]) -> float:
    return sum(moment.after.clock.shortest - moment.before.clock.shortest for moment in moments)
