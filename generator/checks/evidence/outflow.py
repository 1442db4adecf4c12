"""What leaves the part, the tray or the hands at a step, and into which container."""

from generator.problems import Cause
from generator.study import Study
from generator.walk import Moment

# At steps of other verbs nothing leaves.
LETTING_GO = ("rinse", "clean", "empty", "wear")


def container_of(study: Study, moment: Moment) -> str | None:
    """The container that a step names, or the one that its place drains to."""
    if moment.step.waste is not None:
        return str(moment.step.waste)
    place = study.place(moment.step.at)
    drains = place.drains_to if place and moment.step.do in ("rinse", "clean") else None
    return str(drains) if drains is not None else None


def coming(study: Study, moment: Moment) -> set[str]:
    """Residues, mixtures and solids that go into the container at this step."""
    step, before = moment.step, moment.before
    if step.do in ("rinse", "clean"):
        place = study.place(step.at)
        return set(before.names("residue")) & {str(name) for name in place.clears} if place else set()
    if step.do == "empty":
        return _tray(moment) | {str(name) for name in step.use if name in study.lab.mixtures}
    if step.do == "wear" and _come_off(moment) & set(before.gloves()):
        return {"gloves"}
    return set()


def _come_off(moment: Moment) -> set[str]:
    """What the step takes off, or replaces by a fresh piece."""
    replaced = moment.step.put_on if moment.step.fresh else ()
    return {str(piece) for piece in (*moment.step.take_off, *replaced)}


def _tray(moment: Moment) -> set[str]:
    """What lies in the tray and was meant for another container than the one it is emptied into."""
    inside = moment.before.value("tray", str(moment.step.at or ""))
    if not isinstance(inside, tuple):
        return set()
    return {residue for meant, residues in inside if meant != moment.step.waste for residue in residues}


def causes_for(moment: Moment, name: str) -> tuple[Cause, ...]:
    """What is behind it: since when the residue rides on the part, or since when it lies in the tray."""
    if moment.step.do == "empty":
        return (moment.before.cause("tray", str(moment.step.at or "")),)
    return (moment.before.cause("residue", name),) if moment.step.do in ("rinse", "clean") else ()
