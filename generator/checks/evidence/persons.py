"""Names of people, as they are told apart from the ids of roles."""

import re
from collections.abc import Iterable

from generator.checks.evidence.references import Reference
from generator.model import Lab, Located, Step, Text
from generator.study.once import once_a_step

_WORD = r"[^\W\d_a-z][\w'’.-]*"
_NAME = re.compile(
    rf"(?:(?:Dr|Mr|Mrs|Ms|Mx|Prof|Professor)\b\.? ?)?{_WORD}(?: (?:de|van|von|der|la|{_WORD}))+|"
    rf"(?:Dr|Mr|Mrs|Ms|Mx|Prof|Professor)\b\.? {_WORD}"
)
_NO_SENTENCES = frozenset({"now", "where", "marks"})


def people(lab: Lab) -> tuple[str, ...]:
    """The names under `now`, each once."""
    return tuple(dict.fromkeys(str(role.now) for role in lab.roles.values() if role.now))


def is_person(lab: Lab, reference: Reference) -> bool:
    """Whether a name in the place of a role is that of a person: one under `now`, or written like one."""
    if reference.kind != "role":
        return False
    name = str(reference.name)
    if any(name.lower() in (known.lower(), *known.lower().split()) for known in people(lab)):
        return True
    titles = {role.title.lower() for role in lab.roles.values()}
    return bool(_NAME.fullmatch(name)) and name.lower() not in titles


def role_of(lab: Lab, name: str) -> str:
    """The role that a person holds by `now`, empty where none says so."""
    return next((str(id) for id, role in lab.roles.items() if role.now and _same(str(role.now), name)), "")


def _same(now: str, name: str) -> bool:
    return name.lower() in (now.lower(), *now.lower().split())


def sentences(thing: object) -> list[tuple[Text, str]]:
    """Every text under a noun with the step it stands in; the names under `now` are left out."""
    found: list[tuple[Text, str]] = []
    _collect((thing,), "", found)
    return found


@once_a_step
def _at_step(step: Step) -> tuple[tuple[Text, str], ...]:
    found: list[tuple[Text, str]] = []
    _collect(_fields(step), str(step.id), found)
    return tuple(found)


def _fields(noun: Located) -> Iterable[object]:
    fields = noun.__dict__
    return [fields[name] for name in noun.model_fields_set if name not in _NO_SENTENCES]


def _collect(things: Iterable[object], step: str, found: list[tuple[Text, str]]) -> None:
    for thing in things:
        if type(thing) is Text:
            found.append((thing, step))
        elif isinstance(thing, Step):
            found += _at_step(thing)
        elif isinstance(thing, Located):
            _collect(_fields(thing), step, found)
        elif isinstance(thing, dict):
            _collect(thing.values(), step, found)
        elif isinstance(thing, tuple):
            _collect(thing, step, found)
