"""What the steps of a page are told from."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.formulas import Formula
from generator.hazards import Edition
from generator.model import Step
from generator.study import Study
from generator.views.addresses import procedure_address
from generator.views.filling.first_looks import first_begun
from generator.views.shown import LinkView
from generator.walk import Moment


@dataclass(frozen=True)
class Telling:
    """What a step is told from: the study, the formulas, each step's number and first moment.

    `limited` are the steps that must be reached within a time, `begun` those that are the first to begin work
    at their place; `base` is what everybody wears anyway.
    """

    study: Study
    formulas: Mapping[str, Formula]
    numbers: dict[str, str]
    moments: dict[str, Moment]
    limited: tuple[Step, ...]
    begun: frozenset[str]
    base: frozenset[str]

    @property
    def edition(self) -> Edition:
        """Which texts the lab uses."""
        return Edition(self.study.lab.lab.ghs)

    def link(self, step: str) -> LinkView:
        """A step of this procedure by its number."""
        text = f"step {self.numbers.get(step, step)}"
        return LinkView(text, procedure_address(self.study.procedure.id), step)


def telling(study: Study, formulas: Mapping[str, Formula]) -> Telling:
    """Numbers in the order of the straight run; a repeated step shows its first moment."""
    steps = study.procedure.steps
    numbers = {str(step.id): str(number) for number, step in enumerate(steps, 1)}
    limited = tuple(step for step in steps if step.since and step.since.time.high)
    base = frozenset(map(str, study.lab.lab.base_wear))
    moments: dict[str, Moment] = {}
    for moment in study.walk.straight:
        moments.setdefault(str(moment.step.id), moment)
    return Telling(study, formulas, numbers, moments, limited, first_begun(steps), base)
