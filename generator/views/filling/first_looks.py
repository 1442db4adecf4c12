"""Where a place is looked at that no step of its own opens: at the first step that begins work there."""

from collections.abc import Iterable

from generator.model import Place, Step
from generator.study import Study

# With these a machine is started, or something is put into it; a rinse is begun with the part in the hand.
_BEGINNING = ("put-in", "set", "heat", "add", "clean")


def first_begun(steps: Iterable[Step]) -> frozenset[str]:
    """The ids of the steps that are the first to begin work at their place."""
    first: dict[str, str] = {}
    for step in steps:
        if step.at and step.do in _BEGINNING:
            first.setdefault(str(step.at), str(step.id))
    return frozenset(first.values())


def looked_at_first(study: Study, step: Step, place: Place, begun: frozenset[str]) -> bool:
    """Whether this step starts a machine, or reaches into a place, that no step opens; `begun` as above."""
    if place.cover == "lid" or str(step.id) not in begun:
        return False
    return not any(found.step.do == "open" and found.step.at == step.at for found in study.steps())
