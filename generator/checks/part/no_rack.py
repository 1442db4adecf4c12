"""The part goes into a bath without a rack."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, part
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="no-rack",
    level=Level.ERROR,
    subject="part",
    what="The part goes into a place that holds a mixture while racks are declared and none is mounted.",
    why="Without a rack, fingers go into the bath.",
    bad="""- {id: soak-in, do: put-in, at: soak, for: 8 min,
   say: Lower the board in.}   # and no mount before it""",
    good="""- {id: rack-white, do: mount, rack: white-rack, takes: 2 min,
   say: Put the board in the white rack.}""",
    needs=(
        "part",
        "racks",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every put-in at a place that holds a mixture."""
    for moment, id, place in at_places(study, "put-in"):
        if place.holds and not moment.before.has("rack") and moment.step.rack is None:
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} goes into {called(study, id)} without a rack",
                f"put a `do: mount` step with a `rack:` before it ({called(study, *study.lab.racks)})",
                moment.before.cause("rack"),
            )


RULE = Rule(DOC, in_procedure=find)
