"""Every field in which one noun names another, what it may name, and the names that nothing declares."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache, lru_cache
from importlib.resources import files
from typing import NamedTuple

from generator.checks.evidence.fields import (
    CALLS,
    FREE,
    LAB_FIELDS,
    LIST_FIELDS,
    PROCEDURE_FIELDS,
    ROOM_FIELDS,
    STEP_FIELDS,
)
from generator.hazards import hazard_word_ids
from generator.model import Lab, Step, Text
from generator.study import LabStudy, Study
from generator.study.once import once_a_step

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


class _Holder(NamedTuple):
    """A noun whose fields name others: what it is called, the names in its fields, its step and place."""

    called: str
    names: tuple[tuple[Text, str, str], ...]
    step: str = ""
    place: str = ""


def _names(noun: object, fields: tuple[tuple[str, str], ...]) -> tuple[tuple[Text, str, str], ...]:
    """Every name in some fields of a noun, with the kind of noun that it names and the field."""
    return tuple(_each_name(noun, fields))


def _each_name(noun: object, fields: tuple[tuple[str, str], ...]) -> Iterator[tuple[Text, str, str]]:
    for first, paths in _by_first(fields):
        # Of all the fields that may name something, most nouns have a few.
        if not getattr(noun, first, None):
            continue
        for path, kind, field in paths:
            for name in _values_named(noun) if kind == "value" else named_in(noun, path):
                yield name, kind, field


def _in_lab(lab: Lab) -> Iterator[_Holder]:
    """The nouns of the lab's own files, one for each field."""
    yield _Holder("the room", _names(lab.lab, ROOM_FIELDS))
    for noun, field, kind in LAB_FIELDS:
        for id, holder in getattr(lab, noun).items():
            place = str(id) if noun == "places" else ""
            yield _Holder(str(id), _names(holder, ((field, kind),)), place=place)
    for noun, field, kind in LIST_FIELDS:
        yield from (_Holder(noun, _names(row, ((field, kind),))) for row in getattr(lab, noun))


def _in_procedure(study: Study) -> Iterator[_Holder]:
    """The nouns of a procedure's file, and its translations."""
    yield _Holder("the procedure", _names(study.procedure, PROCEDURE_FIELDS))
    yield from (_at_step(found.step) for found in study.steps())
    for language in study.languages.values():
        yield _Holder("the translation", _names(language, (("translated_by", "role"),)))


@once_a_step
def _at_step(step: Step) -> _Holder:
    return _Holder(f"step {step.id}", _names(step, STEP_FIELDS), step=str(step.id))


@once_a_step
def called_at(step: Step) -> tuple[Text, ...]:
    """Every role that a step says is to be called."""
    return tuple(name for name, _, _ in _names(step, CALLS))


def _values_named(step: object) -> list[Text]:
    """The names of values that stand for an amount, as in `use: {resin-a: resin}`."""
    assert isinstance(step, Step)
    return [amount for amount in step.use.values() if isinstance(amount, Text)]


_Paths = tuple[tuple[tuple[str, ...], str, str], ...]


@cache
def _by_first(fields: tuple[tuple[str, str], ...]) -> tuple[tuple[str, _Paths], ...]:
    """Fields by the first step of their path: paths, kinds and the fields as they are called."""
    paths = [(tuple(field.split(".")), kind, field) for field, kind in fields]
    firsts = dict.fromkeys(path[0] for path, _, _ in paths)
    return tuple((first, tuple(one for one in paths if one[0][0] == first)) for first in firsts)


def named_in(holder: object, path: tuple[str, ...]) -> Iterable[Text]:
    """The names at the end of a path of fields: one, a list, or the keys of a mapping."""
    value = holder
    for depth, field in enumerate(path):
        if isinstance(value, tuple):
            return [name for one in value for name in named_in(one, path[depth:])]
        value = getattr(value, field, None)
        if not value:
            return ()
    if isinstance(value, Text):
        return (value,)
    assert isinstance(value, Iterable)
    return [name for name in value if isinstance(name, Text)]


@lru_cache(maxsize=4)
def declared(study: LabStudy) -> Mapping[str, frozenset[str]]:
    """The names that are there, by kind; of steps and of the job only where a procedure is looked at."""
    in_lab = study.answers.of(study, _declared_in_lab)
    if not isinstance(study, Study):
        return in_lab
    return {
        **in_lab,
        "step of the run": frozenset(str(step.id) for step in study.procedure.steps),
        "step": frozenset(str(found.step.id) for found in study.steps()),
        "value": _values(study),
        "value of the job": _of_job(study),
    }


def _declared_in_lab(study: LabStudy) -> Mapping[str, frozenset[str]]:
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


def _unknown(holders: Iterable[_Holder], known: Mapping[str, frozenset[str]]) -> Iterator[Reference]:
    """References to what nothing declares; stand-ins of the reader for a missing field are left out."""
    for holder in holders:
        for name, kind, field in holder.names:
            if name not in known[kind] and name != LEFT_OUT and _is_meant(name, kind, known):
                yield Reference(name, kind, field, holder.called, holder.step, holder.place)


def _is_meant(name: Text, kind: str, known: Mapping[str, frozenset[str]]) -> bool:
    return kind not in FREE or _is_near(str(name), known[kind])


@lru_cache(maxsize=1024)
def _is_near(name: str, known: frozenset[str]) -> bool:
    return bool(get_close_matches(name, known, 1, 0.8))


@lru_cache(maxsize=4)
def unknown_in_lab(study: LabStudy) -> tuple[Reference, ...]:
    """References of the lab's files to what nothing declares."""
    return tuple(_unknown(_in_lab(study.lab), declared(study)))


@lru_cache(maxsize=4)
def unknown_in_procedure(study: Study) -> tuple[Reference, ...]:
    """References of a procedure to what nothing declares, without names that the lab gets wrong too."""
    found = tuple(_unknown(_in_procedure(study), declared(study)))
    told = {(one.kind, one.name) for one in unknown_in_lab(study)} if found else set()
    return tuple(reference for reference in found if (reference.kind, reference.name) not in told)


def calls(study: LabStudy) -> Iterator[Reference]:
    """Every reference to a role to be called, in the lab's files and in all procedures."""
    for id, place in study.lab.places.items():
        for name in named_in(place, ("not_right", "call")):
            yield Reference(name, "role", "not_right.call", str(id), place=str(id))
    for uses in study.uses.values():
        for call in uses.calls:
            yield Reference(Text(call.role), "role", "call", f"step {call.step}", step=call.step)
