"""A hold that does not say for whom."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="hold-without-who",
    level=Level.ERROR,
    subject="people",
    what="A hold does not say which role has to come and agree.",
    why="A hold that anybody may lift is none.",
    bad="""- {id: set-sum, do: hold, hold: {until: both answers agree}, say: Read the job slip.}""",
    good="""- id: set-sum
  do: hold
  hold: {who: buddy, until: both answers agree}
  say: Read the job slip.""",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a step."""
    for found in study.steps():
        step = found.step
        if (step.do == "hold" and step.hold is None) or (step.hold and step.hold.who is None):
            present = study.procedure.also_present or "ROLE"
            yield DOC.found(
                step.hold.where if step.hold else step.where,
                "the hold does not say which role has to come and agree",
                f"write `hold: {{who: {present}, until: ...}}`",
                step=str(step.id),
            )


RULE = Rule(DOC, in_procedure=find)
