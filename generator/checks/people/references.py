"""Every field in which one noun names another, what it may name, and the names that nothing declares."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache
from importlib.resources import files

from generator.checks.people.fields import (
    FREE,
    KINDS,
    LAB_FIELDS,
    LIST_FIELDS,
    PROCEDURE_FIELDS,
    ROOM_FIELDS,
    STEP_FIELDS,
)
from generator.hazards import hazard_word_ids
from generator.model import Lab, Located, Step, Text
from generator.study import LabStudy, Study

LEFT_OUT = "…"


@dataclass(frozen=True, slots=True)
class Reference:
    """A name as written: in which field of what it stands, what kind of noun it names, its step and place."""

    name: Text
    kind: str
    field: str
    holder: str
    step: str = ""
    place: str = ""


def lab_references(lab: Lab, kinds: frozenset[str] = KINDS) -> Iterator[Reference]:
    """Every name of these kinds in the lab's own files."""
    for field, kind in ROOM_FIELDS:
        if kind in kinds:
            yield from (Reference(name, kind, field, "the room") for name in named_in(lab.lab, field))
    for noun, field, kind in LAB_FIELDS:
        nouns: Mapping[str, Located] = getattr(lab, noun) if kind in kinds else {}
        for id, holder in nouns.items():
            place = str(id) if noun == "places" else ""
            yield from (
                Reference(name, kind, field, str(id), place=place) for name in named_in(holder, field)
            )
    for noun, field, kind in LIST_FIELDS:
        for row in getattr(lab, noun) if kind in kinds else ():
            yield from (Reference(name, kind, field, noun) for name in named_in(row, field))


def procedure_references(study: Study, kinds: frozenset[str] = KINDS) -> Iterator[Reference]:
    """Every name of these kinds in a procedure's file and its translations."""
    for field, kind in PROCEDURE_FIELDS:
        if kind in kinds:
            names = named_in(study.procedure, field)
            yield from (Reference(name, kind, field, "the procedure") for name in names)
    fields = tuple((field, kind) for field, kind in STEP_FIELDS if kind in kinds)
    for found in study.steps():
        yield from step_references(found.step, fields)
    for language in study.languages.values() if "role" in kinds else ():
        for name in named_in(language, "translated_by"):
            yield Reference(name, "role", "translated_by", "the translation")


def step_references(step: Step, fields: tuple[tuple[str, str], ...] = STEP_FIELDS) -> Iterator[Reference]:
    """Every name in some fields of a step."""
    id = str(step.id)
    for field, kind in fields:
        names = _values_named(step) if kind == "value" else named_in(step, field)
        for name in names:
            yield Reference(name, kind, field, f"step {id}", step=id)


def _values_named(step: Step) -> list[Text]:
    """The names of values that stand for an amount, as in `use: {resin-a: resin}`."""
    return [amount for amount in step.use.values() if isinstance(amount, Text)]


def named_in(holder: object, field: str) -> Iterable[Text]:
    """The names at the end of a dotted field: one, a list, or the keys of a mapping."""
    if isinstance(holder, tuple):
        return [name for one in holder for name in named_in(one, field)]
    head, _, rest = field.partition(".")
    value = getattr(holder, head, None)
    if not value:
        return ()
    if rest:
        return named_in(value, rest)
    if isinstance(value, Text):
        return (value,)
    return [name for name in value if isinstance(name, Text)]


def declared(study: LabStudy) -> dict[str, frozenset[str]]:
    """The names that are there, by kind; steps and rules only where a procedure is looked at."""
    lab = study.lab
    known = {
        kind: frozenset(str(id) for noun in nouns for id in getattr(lab, noun))
        for kind, nouns in _NOUNS.items()
    }
    known["hazard"] = frozenset({"chemicals", *hazard_word_ids(), *map(str, lab.hazard_words)})
    known["group"] = frozenset(str(group) for bought in lab.substances.values() for group in bought.groups)
    known["thing"] = frozenset(
        str(id) for nouns in _NOUNS.values() for noun in nouns for id in getattr(lab, noun)
    )
    known["rule"] = rule_ids()
    if isinstance(study, Study):
        known["step of the run"] = frozenset(str(step.id) for step in study.procedure.steps)
        known["step"] = frozenset(str(found.step.id) for found in study.steps())
        known["value"] = _values(study)
        known["value of the job"] = _of_job(study)
    return known


def _values(study: Study) -> frozenset[str]:
    """Names that can stand for an amount: of the job, given at a step, or read at one."""
    at_steps = [{*found.step.given, *found.step.record} for found in study.steps()]
    return frozenset({"all", "rest", *map(str, study.procedure.job)}.union(*at_steps))


def _of_job(study: Study) -> frozenset[str]:
    """Names of the job and of the columns in its lists: what a limit can be compared with."""
    job = study.procedure.job
    rows = (row for value in job.values() if isinstance(value, tuple) for row in value)
    return frozenset({*map(str, job)}.union(*(map(str, row) for row in rows)))


def absent(lab: Lab, kind: str) -> str:
    """The noun that a kind wants declared first, where the lab has none of it; else empty."""
    noun = _NOUNS.get(kind, ("",))[0]
    return noun if noun and kind not in FREE and not getattr(lab, noun) else ""


_NOUNS: dict[str, tuple[str, ...]] = {
    "role": ("roles",),
    "sign-off": ("signoffs",),
    "piece of PPE": ("ppe",),
    "substance or mixture": ("substances", "mixtures"),
    "mixture": ("mixtures",),
    "vessel": ("mixtures", "places", "substances", "waste"),
    "container": ("waste",),
    "waste": ("residues", "mixtures", "substances"),
    "residue": ("residues",),
    "place": ("places",),
    "timer": ("timers",),
    "rack": ("racks",),
}


@cache
def rule_ids() -> frozenset[str]:
    """The ids of all rules, from the names of their modules: a rule cannot ask the registry that holds it."""
    subjects = [folder for folder in files("generator.checks").iterdir() if folder.is_dir()]
    modules = [file.name for folder in subjects for file in folder.iterdir() if file.name.endswith(".py")]
    return frozenset(
        name.removesuffix(".py").replace("_", "-") for name in modules if not name.startswith("_")
    )


def unknown(references: Iterable[Reference], known: Mapping[str, frozenset[str]]) -> Iterator[Reference]:
    """References to what nothing declares; stand-ins of the reader for a missing field are left out."""
    for reference in references:
        if reference.name not in known[reference.kind] and reference.name != LEFT_OUT:
            free = reference.kind in FREE
            if not free or get_close_matches(reference.name, known[reference.kind], 1, 0.8):
                yield reference


def unknown_in_lab(study: LabStudy, kinds: frozenset[str] = KINDS) -> tuple[Reference, ...]:
    """References of the lab's files to what nothing declares."""
    return tuple(unknown(lab_references(study.lab, kinds), declared(study)))


def unknown_in_procedure(study: Study, kinds: frozenset[str] = KINDS) -> tuple[Reference, ...]:
    """References of a procedure to what nothing declares, without names that the lab gets wrong too."""
    found = tuple(unknown(procedure_references(study, kinds), declared(study)))
    told = {(one.kind, one.name) for one in unknown_in_lab(study, kinds)} if found else set()
    return tuple(reference for reference in found if (reference.kind, reference.name) not in told)


def calls(study: LabStudy) -> Iterator[Reference]:
    """Every reference to a role to be called, in the lab's files and in all procedures."""
    for id, place in study.lab.places.items():
        for name in named_in(place, "not_right.call"):
            yield Reference(name, "role", "not_right.call", str(id), place=str(id))
    for uses in study.uses.values():
        for call in uses.calls:
            yield Reference(Text(call.role), "role", "call", f"step {call.step}", step=call.step)
