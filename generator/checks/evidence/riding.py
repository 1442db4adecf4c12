"""What rides on the part when it goes into a place."""

from generator.checks.evidence.moments import at_places
from generator.model import Place
from generator.study import Study
from generator.walk import Moment


def carried_against(moment: Moment, place: Place) -> set[str]:
    """Residues on the part that the place does not list under `allows`."""
    return set(moment.before.names("residue")) - {str(name) for name in place.allows or ()}


def mains_again(study: Study, moment: Moment) -> set[str]:
    """Residues left by mains water after an earlier rinse had already taken them off."""
    return {name for name in moment.before.names("residue") if _came_back(study, moment, name)}


def _came_back(study: Study, moment: Moment, residue: str) -> bool:
    since = moment.before.atom("residue", residue).since
    source = study.step(since)
    place = study.place(source.at) if source else None
    if place is None or place.water != "mains":
        return False
    start = next((m.order for m in study.walk.straight if m.step.id == since), 0)
    rinses = at_places(study, "rinse", straight=True)
    return any(rinse.order < start and residue in where.clears for rinse, _, where in rinses)
