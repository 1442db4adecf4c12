"""The part is taken out, or the place opened, with current or elements on."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, part, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="lifted-live",
    level=Level.ERROR,
    subject="places",
    what="`take-out` or `open` at a place that is live.",
    why="Sparks, shocks and burns; a plated edge burnt black.",
    bad="""- {id: copper-in, do: put-in, at: copper, power: {to: 5 A}, for: 50 min, say: Hang the board in.}
- {id: copper-out, do: take-out, at: copper, say: Lift slowly.}""",
    good="""- {id: power-down, do: switch-off, at: copper, say: Turn the current to zero.}
- {id: copper-out, do: take-out, at: copper, say: Lift slowly.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every take-out and opening of a live place."""
    for moment, id, _ in at_places(study, "take-out", "open"):
        if moment.before.has("live", id):
            deed = "is taken out of" if moment.step.do == "take-out" else "is reached by opening"
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} {deed} {called(study, id)} with current or elements on",
                f"put a `do: switch-off` step at {id} before {moment.step.id}",
                moment.before.cause("live", id),
                label=f"on {since_when(study, moment.before.atom('live', id).since)}",
            )


RULE = Rule(DOC, in_procedure=find)
