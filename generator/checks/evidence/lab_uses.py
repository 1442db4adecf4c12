"""What one procedure gives to the rules of the whole lab."""

from generator.checks.evidence.contents import in_use, reached, steps_of
from generator.checks.evidence.references import called_at
from generator.model import Procedure
from generator.study import LabStudy
from generator.study.uses import Called, Uses


def uses_of(study: LabStudy, procedure: Procedure) -> Uses:
    """The names that its steps bring into use, reach and call, each in the order met."""
    steps = tuple(steps_of(procedure))
    used = dict.fromkeys(id for step in steps for id in in_use(study, step))
    calls = (Called(str(role), str(step.id)) for step in steps for role in called_at(step))
    return Uses(tuple(used), tuple(sorted(reached(study, steps))), tuple(calls))
