"""A check that may fail and says nothing about what comes then."""

from collections.abc import Iterator

from generator.checks.evidence.fails import limited
from generator.checks.rule import Rule
from generator.model import Step
from generator.problems import Level, Location, Problem, RuleDoc
from generator.study import LabStudy, Study, title_of

DOC = RuleDoc(
    id="no-next-if-fail",
    level=Level.ERROR,
    subject="people",
    what="A check, a reading with a limit or a watch has no `fail`, or a place with a `look` has no "
    "`not_right`.",
    why="When it is not as it should be, a student without a next step goes on, or guesses.",
    bad="""- {id: see-dry, do: check, at: light, check: no water film in any hole, say: Tilt the board.}""",
    good="""- id: see-dry
  do: check
  at: light
  check: no water film in any hole
  fail: {redo: dry-2, at_most: 3, call: technician}
  say: Tilt the board.""",
)


def find_in_lab(study: LabStudy) -> Iterator[Problem]:
    """One problem a place."""
    for id, place in study.lab.places.items():
        if place.look and place.not_right is None:
            yield DOC.found(
                place.spot("look"),
                f"{title_of(study.lab, str(id))} has a `look`, and nothing says what to do when it is not "
                f"right",
                "write at the place: `not_right: {say: ..., call: ROLE}`",
                place=str(id),
            )


def find(study: Study) -> Iterator[Problem]:
    """One problem a step, one a watch."""
    for found in study.steps():
        step = found.step
        judged = _judged(study, step)
        if judged and step.fail is None:
            yield _missing(step, judged, _spot(step), "fail")
        if step.watch and step.watch.fail is None:
            yield _missing(step, "its watch", step.watch.where, "fail` under the `watch")


def _spot(step: Step) -> Location:
    return step.spot(next((field for field in ("check", "look") if getattr(step, field)), "record"))


def _judged(study: Study, step: Step) -> str:
    """What is judged; a look of the step's own falls back on what its place says under `not_right`."""
    readings = limited(step.record)
    place = study.place(step.at)
    if step.look and not (place and place.not_right):
        return "its look"
    if step.check:
        return "its check"
    return f"the limit of {readings[0]}" if readings else ""


def _missing(step: Step, judged: str, where: Location, field: str) -> Problem:
    return DOC.found(
        where,
        f"nothing says what to do when {judged} is not as it should be",
        f"write `{field}`: what to do (`say` or `redo`) and whom to `call`",
        step=str(step.id),
    )


RULE = Rule(DOC, in_lab=find_in_lab, in_procedure=find)
