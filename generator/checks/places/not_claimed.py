"""The part goes back on a machine that nobody has booked again."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, part, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="not-claimed",
    level=Level.ERROR,
    subject="places",
    what="The part goes back on a released machine that nobody claimed.",
    why="Somebody else may be using it.",
    bad="""- {id: free-drill, do: release, at: drill, say: Turn the slot to FREE.}
- {id: back-on-pins, do: mount, at: drill, say: Put the board on the same pins.}""",
    good="""- {id: claim-drill, do: claim, at: drill, say: Book the drill. Open the saved job.}
- {id: back-on-pins, do: mount, at: drill, say: Put the board on the same pins.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every mount at a machine that was freed."""
    for moment, id, _ in at_places(study, "mount"):
        if moment.before.text("machine", id) == "free":
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} goes back on {called(study, id)}, which was freed and not booked again",
                f"put a `do: claim` step at {id} before {moment.step.id}",
                moment.before.cause("machine", id),
                label=f"freed {since_when(study, moment.before.atom('machine', id).since)}",
            )


RULE = Rule(DOC, in_procedure=find)
