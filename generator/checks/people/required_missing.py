"""A required field is not there."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.model import Step
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, Study

DOC = RuleDoc(
    id="required-missing",
    level=Level.ERROR,
    subject="people",
    what="A field that must be there is not: `name` and `room` of the lab, one role, a procedure's "
    "`title`, `who`, `approver` and one stage with one step, a step's `id`, `say` and `do`. Where the lab "
    "declares substances, weigh, add, mix and pour say what they `use`; where it declares places, steps "
    "that open, close, put in, take out, claim, save or release say `at` which.",
    why="Without it nothing can be checked, and the page would have a hole.",
    bad="""- {id: weigh-a, do: weigh, at: balance, say: Weigh part A into the big cup.}""",
    good="""- {id: weigh-a, do: weigh, at: balance, use: {resin-a: 182 g}, say: Weigh part A.}""",
)

_USING = {"weigh": "weighs", "add": "adds", "mix": "mixes", "pour": "pours"}
_PLACED = {
    "open": "opens",
    "close": "closes",
    "put-in": "puts in",
    "take-out": "takes out",
    "claim": "claims",
    "save": "saves",
    "release": "releases",
}


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """One problem where the roles are there and empty; what is not there at all is told while reading."""
    lab = study.lab
    if not lab.roles and "roles" in lab.marks:
        yield DOC.found(
            lab.spot("roles"), "the lab has no role", "declare one, as `technician: {title: ...}`"
        )


def find(study: Study) -> Iterator[Problem]:
    """One problem a step that does not say what it uses, or where it is done."""
    for found in study.steps():
        step = found.step
        if step.do in _USING and not step.use and study.lab.substances:
            known = next(map(str, study.lab.substances))
            yield _missing(step, f"{_USING[step.do]} and does not say what", f"use: {{{known}: 10 g}}")
        if step.do in _PLACED and step.at is None and "at" not in step.marks and study.lab.places:
            yield _missing(
                step, f"{_PLACED[step.do]} and does not say where", f"at: {next(iter(study.lab.places))}"
            )


def _missing(step: Step, what: str, example: str) -> Problem:
    return DOC.found(
        step.spot("do"),
        f"the step {what}",
        f"write it as a field, for example `{example}`",
        step=str(step.id),
    )


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find, found_by="reading")
