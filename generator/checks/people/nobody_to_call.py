"""A failed check with nobody to call."""

from collections.abc import Iterator

from generator.checks.evidence.fails import fails
from generator.checks.rule import Rule
from generator.model import Lab
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study, title_of

DOC = RuleDoc(
    id="nobody-to-call",
    level=Level.ERROR,
    subject="people",
    what="A `fail`, or the `not_right` of a place, names no role to `call`.",
    why="When the words on the card do not help, somebody has to come.",
    bad="""fail: {say: Lid on.}""",
    good="""fail: {say: Lid on., call: technician}""",
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """One problem a place."""
    for id, place in study.lab.places.items():
        if place.not_right and place.not_right.call is None:
            yield DOC.found(
                place.not_right.where,
                f"`not_right` of {title_of(study.lab, str(id))} names nobody to call",
                _fix(study.lab),
                place=str(id),
            )


def find(study: Study) -> Iterator[Problem]:
    """One problem a `fail`."""
    for found in fails(study):
        if found.fail.call is None:
            which = "the watch" if found.of_watch else "the check"
            yield DOC.found(
                found.fail.where,
                f"when {which} of {found.step.id} fails, nobody is named to call",
                _fix(study.lab),
                step=str(found.step.id),
            )


def _fix(lab: Lab) -> str:
    role = next((str(id) for id, role in lab.roles.items() if role.reach), "ROLE")
    return f"write the role to call, as `call: {role}`"


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
