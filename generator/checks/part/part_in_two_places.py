"""Something is done to the part while it is still in another place."""

from collections.abc import Iterator

from generator.checks.evidence.moments import (
    called,
    found_at,
    left_inside,
    made_here,
    moments,
    part,
    since_when,
)
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="part-in-two-places",
    level=Level.ERROR,
    subject="part",
    what="The part is put in, rinsed, dried, cooled or mounted while it is still in another place.",
    why="A take-out is missing, or stands too late.",
    bad="""- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}
- {id: rinse-1, do: rinse, at: di, for: 90 s, waste: jug-a, say: Spray both sides.}""",
    good="""- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}
- {id: soak-out, do: take-out, at: soak, say: Lift slowly.}
- {id: rinse-1, do: rinse, at: di, for: 90 s, waste: jug-a, say: Spray both sides.}""",
    needs=(
        "part",
        "places",
    ),
)


_HANDLED = ("put-in", "rinse", "dry", "clean", "cool", "mount")


def find(study: Study) -> Iterator[Problem]:
    """Every handling of the part while it is somewhere else."""
    for moment in moments(study, *_HANDLED):
        where, here = moment.before.text("in"), str(moment.step.at or "")
        if where and where != here:
            since = moment.before.atom("in").since
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} is still in {called(study, where)} at this step",
                f"put a `do: take-out` step at {where} between {since} and {moment.step.id}",
                moment.before.cause("in"),
                explains=(*made_here(moment), *left_inside(moment)),
                label=f"put in {since_when(study, since)}",
            )


RULE = Rule(DOC, in_procedure=find)
