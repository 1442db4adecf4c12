"""The part is dry where the place wants it wet."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, made_here, part, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="arrives-dry",
    level=Level.ERROR,
    subject="part",
    what="The part is dry where the place says `arrive: wet`.",
    why="A dry part holds air bubbles and a fresh surface dulls in air.",
    bad="""- {id: dry-5, do: dry, at: blower, takes: 4 min, say: Dry both faces.}
- {id: copper-in, do: put-in, at: copper, for: 50 min, say: Hang the board in.}""",
    good="""- {id: rinse-5, do: rinse, at: di, for: 100 s, waste: drum-p, say: Spray both sides.}
- {id: copper-in, do: put-in, at: copper, for: 50 min, say: Hang the wet board in.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """At each put-in, the part's wetness against what the place asks for."""
    for moment, id, place in at_places(study, "put-in"):
        if place.arrive == "wet" and not moment.before.has("wet"):
            since = moment.before.atom("wet").since
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} is dry when it enters {called(study, id)}, which takes only "
                f"{'wet'} parts",
                f"put a `do: rinse` step before {moment.step.id}, or leave out what dries the part",
                moment.before.cause("wet"),
                explains=made_here(moment),
                label=f"last made dry {since_when(study, since)}",
            )


RULE = Rule(DOC, in_procedure=find)
