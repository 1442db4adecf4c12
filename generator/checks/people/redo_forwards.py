"""A redo that leads forwards."""

from collections.abc import Iterator

from generator.checks.evidence.fails import fails
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="redo-forwards",
    level=Level.ERROR,
    subject="people",
    what="`redo` names a step that comes later than the check.",
    why="The check that failed would never be made again.",
    bad="""- {id: see-dry, do: check, check: no film, fail: {redo: black-in, call: technician}, say: Look.}
- {id: black-in, do: put-in, at: black, for: 6 min, say: Slide the board in.}""",
    good="""- {id: dry-2, do: dry, at: blower, say: Dry both faces.}
- {id: see-dry, do: check, check: no film, fail: {redo: dry-2, at_most: 1, call: technician}, say: Look.}""",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a `redo`."""
    order = {str(step.id): index for index, step in enumerate(study.procedure.steps)}
    for found in fails(study):
        redo = found.fail.redo
        if redo is not None and order.get(str(redo), -1) > found.index:
            yield DOC.found(
                redo.where,
                f"`redo` leads forwards to {redo}: the failed check of {found.step.id} would never be "
                f"made again",
                f"name a step before {found.step.id}, or leave `redo` out and say what to do",
                step=str(found.step.id),
            )


RULE = Rule(DOC, in_procedure=find)
