"""A second kind of waste runs into a tray that is not empty."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="tray-mixes",
    level=Level.ERROR,
    subject="places",
    what="A rinse runs into a tray that still holds what belongs in another container.",
    why="Wastes that meet in a tray may react, and no container takes both.",
    bad="""- {id: rinse-2, do: rinse, at: di, for: 120 s, waste: jug-a, say: Spray both sides.}
- {id: rinse-5, do: rinse, at: di, for: 100 s, waste: drum-p, say: Spray both sides.}""",
    good="""- {id: rinse-2, do: rinse, at: di, for: 120 s, waste: jug-a, say: Spray both sides.}
- {id: tray-2, do: empty, at: di, waste: jug-a, say: Empty the tray.}
- {id: rinse-5, do: rinse, at: di, for: 100 s, waste: drum-p, say: Spray both sides.}""",
    needs=(
        "places",
        "waste",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every rinse over a tray that is not empty."""
    for moment, id, place in at_places(study, "rinse"):
        inside = moment.before.value("tray", id)
        if not place.tray or not isinstance(inside, tuple):
            continue
        others = sorted({container for container, _ in inside} - {str(moment.step.waste or "")})
        if others:
            since = moment.before.atom("tray", id).since
            yield found_at(
                DOC,
                moment,
                f"the tray of {called(study, id)} still holds what belongs in {called(study, *others)}",
                f"put a `do: empty` step at {id} with `waste: {others[0]}` behind {since}",
                moment.before.cause("tray", id),
                explains=(moment.after.cause("tray", id),),
                label=f"in the tray {since_when(study, since)}",
            )


RULE = Rule(DOC, in_procedure=find)
