"""The part is wet where the place wants it dry."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, made_here, part, since_when
from generator.checks.rule import Rule
from generator.problems import Cause, Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import START, Moment

DOC = RuleDoc(
    id="arrives-wet",
    level=Level.ERROR,
    subject="part",
    what=(
        "The part is wet where the place says `arrive: dry`. A place that says `drained` takes no "
        "dripping part."
    ),
    why="Water traps air in holes and thins a bath.",
    bad="""- {id: rinse-2, do: rinse, at: di, for: 120 s, waste: jug-a, say: Spray both sides.}
- {id: black-in, do: put-in, at: black, for: 6 min, say: Slide the board in.}""",
    good="""- {id: rinse-2, do: rinse, at: di, for: 120 s, waste: jug-a, say: Spray both sides.}
- {id: dry-2, do: dry, at: blower, takes: 5 min, say: Dry both faces.}
- {id: black-in, do: put-in, at: black, for: 6 min, say: Slide the dry board in.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """At each put-in, the part's wetness against what the place asks for."""
    for moment, id, place in at_places(study, "put-in"):
        dripping = place.arrive == "drained" and moment.before.text("wet") == "dripping"
        if (place.arrive == "dry" and moment.before.has("wet")) or dripping:
            since = moment.before.atom("wet").since
            behind = "the start" if since == START else since
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} is still wet when it enters {called(study, id)}, which takes "
                f"only {place.arrive} parts",
                f"put a `do: dry` step and a check between {behind} and {moment.step.id}",
                moment.before.cause("wet"),
                explains=(*made_here(moment), *_unseen(moment, since)),
                label=f"last made wet {since_when(study, since)}",
            )


def _unseen(moment: Moment, since: str) -> tuple[Cause, ...]:
    """What made it wet has also undone the look at it, where nobody looked again."""
    seen = moment.before.cause("seen")
    return (seen,) if seen.since == since and since != START else ()


RULE = Rule(DOC, in_procedure=find)
