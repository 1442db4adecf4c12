"""A lid is closed while the part is in the bath."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, part, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="lid-on-part",
    level=Level.ERROR,
    subject="places",
    what="A lid is closed while the part is still in a place that holds a mixture.",
    why="The part is forgotten, and the lid comes down on the rack.",
    bad="""- {id: close-1, do: close, at: soak, say: Lid on.}
- {id: soak-out, do: take-out, at: soak, say: Lift slowly.}""",
    good="""- {id: soak-out, do: take-out, at: soak, say: Lift slowly.}
- {id: close-1, do: close, at: soak, say: Lid on.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every closing of the place that the part is in."""
    for moment, id, place in at_places(study, "close"):
        if place.holds and moment.before.text("in") == id:
            yield found_at(
                DOC,
                moment,
                f"the lid of {called(study, id)} goes on while the {part(study)} is in it",
                f"put the `do: take-out` step at {id} before {moment.step.id}",
                moment.before.cause("in"),
                explains=(moment.after.cause("open", id),),
                label=f"put in {since_when(study, moment.before.atom('in').since)}",
            )


RULE = Rule(DOC, in_procedure=find)
