"""What a step checks, and what it says to do when the check fails."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from generator.model import Fail, Reading, Step
from generator.study import Study


@dataclass(frozen=True, slots=True)
class Failing:
    """A `fail`, the step it stands on, whether it is that of the watch, and the step's index in the run.

    A mend counts at the index of the step that it mends.
    """

    fail: Fail
    step: Step
    of_watch: bool
    index: int


@lru_cache(maxsize=4)
def fails(study: Study) -> tuple[Failing, ...]:
    """Every `fail` of a procedure, those of mends and watches too."""
    return tuple(_fails(study))


def _fails(study: Study) -> Iterator[Failing]:
    order = {str(step.id): index for index, step in enumerate(study.procedure.steps)}
    for found in study.steps():
        index = order.get(str((found.mends or found.step).id), 0)
        if found.step.fail:
            yield Failing(found.step.fail, found.step, False, index)
        if found.step.watch and found.step.watch.fail:
            yield Failing(found.step.watch.fail, found.step, True, index)


def limited(record: Mapping[str, Reading]) -> tuple[str, ...]:
    """The names of the readings that have a limit."""
    return tuple(str(name) for name, reading in record.items() if reading.limit is not None)


def looks(study: Study, step: Step) -> bool:
    """Whether a step checks anything: a sentence, a limited reading, or the look of a place that it opens."""
    if step.check or limited(step.record):
        return True
    place = study.place(step.at)
    return bool(place and (step.look or place.look) and step.do in ("open", "put-in", "take-out"))
