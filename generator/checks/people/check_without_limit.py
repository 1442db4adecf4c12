"""A check at which there is nothing to decide by."""

from collections.abc import Iterator

from generator.checks.evidence.fails import limited
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="check-without-limit",
    level=Level.ERROR,
    subject="people",
    what="A `do: check` has no `check` sentence and no reading with a limit.",
    why="Without a mark everything passes, and two people decide differently.",
    bad="""- {id: measure, do: check, record: {hole-1: mohm}, fail: {call: technician}, say: Measure.}""",
    good="""- id: measure
  do: check
  record: {hole-1: up to 0.70 mohm}
  fail: {call: technician}
  say: Measure.""",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a step."""
    for found in study.steps():
        step = found.step
        if step.do == "check" and not step.check and not limited(step.record):
            number = next(
                (str(name) for name, reading in step.record.items() if reading.kind == "number"), ""
            )
            yield DOC.found(
                step.spot("record") if step.record else step.where,
                "this check has nothing to decide by: no `check` and no reading with a limit",
                f"give {number} a limit, as `{number}: up to ...`"
                if number
                else "write `check: ...` with what must be seen, or a reading with its limit",
                step=str(step.id),
            )


RULE = Rule(DOC, in_procedure=find)
