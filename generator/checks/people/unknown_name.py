"""A name that nothing declares."""

from collections.abc import Iterable, Iterator, Mapping
from difflib import get_close_matches

from generator.checks.evidence.fields import FREE
from generator.checks.evidence.persons import is_person
from generator.checks.evidence.references import (
    Reference,
    absent,
    declared,
    unknown_in_lab,
    unknown_in_procedure,
)
from generator.checks.rule import Rule
from generator.hazards import group_name
from generator.model import Lab, Procedure
from generator.problems import Cause, Level, Problem, RuleDoc, missing
from generator.study import LabStudy, Study, nearest
from generator.study.reactivity import CHART

DOC = RuleDoc(
    id="unknown-name",
    level=Level.ERROR,
    subject="people",
    what="A field names a role, place, step, residue, timer, rack, piece of PPE, container, mixture, "
    "substance, sign-off, rule or verb that is not declared. Solids under `takes` and groups are free "
    "words; of those only one that is nearly a declared name counts.",
    why="A mistyped name switches off every check that hangs on it, and the page would print nothing there.",
    bad="""roles:
  technician: {title: Duty technician, reach: extension 417}
steps:
  - {id: see-dry, do: check, check: no water film, fail: {call: techncian}, say: Tilt the board.}""",
    good="""roles:
  technician: {title: Duty technician, reach: extension 417}
steps:
  - {id: see-dry, do: check, check: no water film, fail: {call: technician}, say: Tilt the board.}""",
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """One problem a name, where it first stands in the lab's files; and groups that the chart has not."""
    yield from _told(study.lab, unknown_in_lab(study), declared(study))
    for id, bought in study.lab.substances.items():
        missing = [str(group) for group in bought.chart_groups or () if group_name(group) is None]
        if missing:
            yield DOC.found(
                bought.spot("chart_groups"),
                f"`chart_groups` of `{id}` names group {', '.join(missing)}, which the chart {CHART} has not",
                "write a group from 1 to 34 or from 101 to 107, or leave the field out",
            )


def find(study: Study) -> Iterator[Problem]:
    """One problem a name, where it first stands in the procedure; the lab's wrong names are told there."""
    yield from _told(study.lab, unknown_in_procedure(study), declared(study), study.procedure)


def _told(
    lab: Lab,
    found: Iterable[Reference],
    known: Mapping[str, frozenset[str]],
    procedure: Procedure | None = None,
) -> Iterator[Problem]:
    """One problem a name; where the lab has none of a noun at all, one for all the names of that noun."""
    groups: dict[str, list[Reference]] = {}
    for reference in sorted(found, key=lambda one: (one.kind in FREE, one.name.where)):
        if not is_person(lab, reference):
            noun = absent(lab, reference.kind)
            groups.setdefault(f"{noun}:" if noun else str(reference.name), []).append(reference)
    for references in groups.values():
        first = references[0]
        noun = absent(lab, first.kind)
        offered = _before(procedure, first.step) if procedure and first.kind.startswith("step") else None
        why = f"and the lab declares no `{noun}`" if noun else f"which {_missing(first.kind)}"
        yield DOC.found(
            first.name.where,
            f"{_holder(first)} names the {_kind(first)} `{first.name}`, {why}{_more(references)}",
            _declare(noun, references) if noun else _fix(lab, first, offered or known[first.kind]),
            step=first.step,
            place=first.place,
            causes=_missing_step(first, procedure.where.file if procedure else ""),
        )


def _before(procedure: Procedure, step: str) -> frozenset[str]:
    """The steps before a step and itself: a redo or a `since` never names a later one."""
    ids = [str(each.id) for each in procedure.steps]
    while ids and ids[-1] != step:
        ids.pop()
    return frozenset(ids)


def _missing_step(reference: Reference, file: str) -> tuple[Cause, ...]:
    """A step that is gone is missed by all that names it, in the side files too."""
    return (missing("step", str(reference.name), file),) if reference.kind.startswith("step") else ()


def _declare(noun: str, references: list[Reference]) -> str:
    names = dict.fromkeys(str(reference.name) for reference in references)
    return f"declare under `{noun}`: {', '.join(names)}"


def _holder(reference: Reference) -> str:
    holder = (
        f"`{reference.holder}`"
        if reference.holder.islower() and " " not in reference.holder
        else reference.holder
    )
    return f"`{reference.field}` of {holder}"


_NOT_THERE = {
    "rule": "is no rule",
    "step": "the procedure has not",
    "step of the run": "is no step of the run",
    "value": "is no value of the job and no reading",
    "value of the job": "the job has not, so it is never compared",
}


def _kind(reference: Reference) -> str:
    """The kind as it reads before the name, where `_missing` says the rest behind it."""
    return "step" if reference.kind == "step of the run" else reference.kind


def _missing(kind: str) -> str:
    return "looks like a mistyped one" if kind in FREE else _NOT_THERE.get(kind, "is not declared")


def _more(references: list[Reference]) -> str:
    first, *others = (reference.name.where for reference in references)
    if not others:
        return ""
    spots = [f"line {at.line}" if at.file == first.file else f"{at.file}:{at.line}" for at in others[:3]]
    return f" (also {', '.join(spots)}{f' and {len(others) - 3} more' if len(others) > 3 else ''})"


def _fix(lab: Lab, reference: Reference, known: frozenset[str]) -> str:
    if reference.kind == "role":
        by_title = next(
            (id for id, role in lab.roles.items() if role.title.lower() == reference.name.lower()), None
        )
        if by_title is not None:
            return f"write the role's id: `{by_title}`"
    words = reference.name.split()
    if len(words) > 1 and known.issuperset(words):
        return f"write commas between them: `{', '.join(words)}`"
    near = get_close_matches(reference.name, known, 1) if reference.kind == "value of the job" else []
    if near:
        return f"write one name at both places: the job has `{near[0]}`"
    if reference.kind in ("rule", "step", "step of the run", "value", "value of the job"):
        return (
            nearest(reference.name, known)
            .replace("declare it, or use", "use")
            .replace("declare it", "name another")
        )
    return nearest(reference.name, known)


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find, found_by="reading")
