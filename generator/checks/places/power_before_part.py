"""Current is on before the part is in."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, part
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="power-before-part",
    level=Level.WARNING,
    subject="places",
    what="A step brings up current at a place that the part is not in.",
    why="The first touch of the part draws a spark and a burnt spot.",
    bad="""- {id: on, do: set, at: copper, power: {to: 5 A},
   say: Bring the current up.}   # and the board still in your hand""",
    good="""- {id: copper-in, do: put-in, at: copper, power: {to: 5 A}, for: 50 min,
   say: Hang the board in. Bring the current up.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Each step of the straight run that states a current."""
    for moment, id, _ in at_places(study, straight=True):
        if moment.step.power is not None and moment.after.text("in") != id:
            yield found_at(
                DOC,
                moment,
                f"current is brought up at {called(study, id)} before the {part(study)} is in it",
                f"put the `do: put-in` step at {id} first, or write the `power:` on it",
                moment.before.cause("in"),
                moment.after.cause("live", id),
            )


RULE = Rule(DOC, in_procedure=find)
