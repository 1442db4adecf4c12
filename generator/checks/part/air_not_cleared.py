"""A part may carry air into a bath."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, part
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="air-not-cleared",
    level=Level.WARNING,
    subject="part",
    what="A dry part, or one to be plated, goes into a liquid and the step has no `rock`.",
    why="An air bubble keeps the bath out of a hole; it is found hours later.",
    bad="""- {id: black-in, do: put-in, at: black, for: 6 min, say: Slide the dry board in.}""",
    good="""- {id: black-in, do: put-in, at: black, for: 6 min, rock: 10 times,
   say: Slide the dry board in.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Each put-in into a liquid on the straight run."""
    for moment, id, place in at_places(study, "put-in", straight=True):
        dry = not moment.before.has("wet")
        if place.holds and moment.step.rock is None and (dry or moment.step.power is not None):
            reason = "dry" if dry else "to be plated"
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} is {reason} and goes into {called(study, id)} without being "
                "rocked free of air",
                "write for example `rock: 10 times`, or `rock: true`",
            )


RULE = Rule(DOC, in_procedure=find)
