"""The part goes into a place that it is already in."""

from collections.abc import Iterator

from generator.checks.evidence.moments import (
    at_places,
    called,
    found_at,
    left_inside,
    made_here,
    part,
    since_when,
)
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="place-taken",
    level=Level.ERROR,
    subject="places",
    what="More parts than `room_for`, or the part is put in where it already is.",
    why="A take-out between the two is missing.",
    bad="""- {id: in-1, do: put-in, at: soak, for: 8 min, say: Lower the board in.}
- {id: in-2, do: put-in, at: soak, for: 8 min, say: Lower the board in.}""",
    good="""- {id: in-1, do: put-in, at: soak, for: 8 min, say: Lower the board in.}
- {id: out-1, do: take-out, at: soak, say: Lift slowly.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every put-in at the place that the part is in."""
    for moment, id, _ in at_places(study, "put-in"):
        if moment.before.text("in") == id:
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} is already in {called(study, id)}",
                f"put a `do: take-out` step at {id} before {moment.step.id}",
                moment.before.cause("in"),
                explains=(*made_here(moment), *left_inside(moment)),
                label=f"put in {since_when(study, moment.before.atom('in').since)}",
            )


RULE = Rule(DOC, in_procedure=find)
