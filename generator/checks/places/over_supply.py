"""The current asked for is more than the supply may give."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import show_quantity

DOC = RuleDoc(
    id="over-supply",
    level=Level.ERROR,
    subject="places",
    what="`power.to` is above `power.most` of the place.",
    why="The supply limits, trips or burns; the sum was made with a wrong area.",
    bad="""- {id: copper-in, do: put-in, at: copper, power: {to: 15 A}, for: 50 min,
   say: Hang the board in.}   # most: 12 A""",
    good="""- {id: copper-in, do: put-in, at: copper, power: {to: 5 A}, for: 50 min,
   say: Hang the board in.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every step that states a current, against its place."""
    for located in study.steps():
        step, place = located.step, study.place(located.step.at)
        most = place.power.most if place and place.power else None
        asked = study.sums.power_of(step)
        if most and asked and asked.dimension == most.dimension and asked.si > most.si:
            yield DOC.found(
                step.spot("power"),
                f"{show_quantity(asked, 3)} is asked for, and {called(study, str(step.at))} may be given "
                f"{show_quantity(most)} at most",
                "look at the area and the current density, or plate at a place with a larger supply",
                step=str(step.id),
            )


RULE = Rule(DOC, in_procedure=find)
