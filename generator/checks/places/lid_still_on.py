"""The part goes through a closed lid."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import START

DOC = RuleDoc(
    id="lid-still-on",
    level=Level.ERROR,
    subject="places",
    what=(
        "The part is put in or taken out while the lid is on. A door is opened and shut by the hand "
        "that puts in or takes out."
    ),
    why="A step is missing, or stands too late.",
    bad="""- {id: soak-in, do: put-in, at: soak, for: 8 min,
   say: Lower the board in.}   # and no open before it""",
    good="""- {id: open-1, do: open, at: soak, say: Lid off.}
- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every put-in and take-out at a place with a lid."""
    for moment, id, place in at_places(study, "put-in", "take-out"):
        if place.cover == "lid" and not moment.before.has("open", id):
            since = moment.before.atom("open", id).since
            yield found_at(
                DOC,
                moment,
                f"the lid of {called(study, id)} is on when the part goes "
                f"{'in' if moment.step.do == 'put-in' else 'out'}",
                f"put a `do: open` step at {id} before {moment.step.id}",
                moment.before.cause("open", id),
                explains=(moment.after.cause("in"), moment.after.cause("entered")),
                label="never opened before here" if since == START else f"closed {since_when(study, since)}",
            )


RULE = Rule(DOC, in_procedure=find)
