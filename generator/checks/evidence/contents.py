"""What a step brings into use, and which substances and groups stand behind a mixture or a residue."""

from collections.abc import Iterable, Iterator, Set
from dataclasses import dataclass
from functools import lru_cache

from generator.model import Lab, Mixture, Procedure, Step, Substance, Text
from generator.study import LabStudy, Study
from generator.study.composition import substances_in
from generator.study.leaving import left_by
from generator.study.once import once_a_lab

WATER = "7732-18-5"


@dataclass(frozen=True, slots=True)
class Brought:
    """A group, the substance that it comes from, and the mixture that holds this (or itself)."""

    group: str
    substance: str
    by: str


def steps_of(procedure: Procedure) -> Iterator[Step]:
    """Every step of a procedure, mends behind the step that they mend."""
    for step in procedure.steps:
        yield step
        if step.fail and step.fail.mend:
            yield step.fail.mend


def mixture(lab: Lab, id: str | None) -> Mixture | None:
    """The mixture of an id, or None."""
    return lab.mixtures.get(Text(id)) if id else None


def substance(lab: Lab, id: str | None) -> Substance | None:
    """The substance of an id, or None."""
    return lab.substances.get(Text(id)) if id else None


def in_use(study: LabStudy, step: Step) -> tuple[str, ...]:
    """Ids of mixtures and substances that a step reaches: what its place holds, then what it uses."""
    place = study.place(step.at)
    held = (str(place.holds),) if place and place.holds else ()
    return tuple(dict.fromkeys((*held, *map(str, step.use)))) if step.use else held


@once_a_lab
def brought_by(lab: Lab, id: str) -> tuple[Brought, ...]:
    """Groups that a mixture, a substance or a residue brings, each with the substance that it comes from."""
    out: dict[Brought, None] = {}
    for name in behind(lab, id):
        for inside in substances_in(lab, name):
            found = substance(lab, inside)
            out.update((Brought(str(group), inside, name), None) for group in (found.groups if found else ()))
    return tuple(out)


def behind(lab: Lab, id: str) -> tuple[str, ...]:
    """The mixtures that leave a residue; a mixture or substance is itself."""
    return left_by(lab, id) if id in lab.residues else (id,)


@once_a_lab
def groups(lab: Lab, id: str) -> frozenset[str]:
    """The groups of a mixture, substance or residue."""
    return frozenset(brought.group for brought in brought_by(lab, id))


def is_water(lab: Lab, id: str) -> bool:
    """Whether a substance is water, by its CAS number."""
    found = substance(lab, id)
    return bool(found and found.cas == WATER)


def reached(study: LabStudy, steps: Iterable[Step]) -> Set[str]:
    """Ids of all mixtures and substances behind what steps reach."""
    named: set[str] = set()
    for step in steps:
        named.update(in_use(study, step))
        if step.into:
            named.add(str(step.into))
    return named.union(*(_inside(study.lab, id) for id in named))


@once_a_lab
def _inside(lab: Lab, id: str) -> tuple[str, ...]:
    found = mixture(lab, id)
    parts = tuple(str(part) for part in found.made_of) if found else ()
    return (*parts, *substances_in(lab, id))


@lru_cache(maxsize=4)
def to_judge(study: LabStudy) -> Set[str]:
    """Which nouns are judged here: those that the procedure reaches; in the lab those that none reaches.

    A warning about a bath is raised in the procedure that uses it, where it can be accepted.
    """
    if isinstance(study, Study):
        return reached(study, (found.step for found in study.steps()))
    everything = frozenset(map(str, (*study.lab.mixtures, *study.lab.substances)))
    return everything.difference(*(uses.reached for uses in study.uses.values()))


def place_of(lab: Lab, mixture_id: str) -> str:
    """The id of the first place that holds a mixture, empty where none does."""
    return next((str(id) for id, place in lab.places.items() if place.holds == mixture_id), "")
