"""Current is to flow through a rack that does not conduct."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, moments, part, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="rack-insulates",
    level=Level.ERROR,
    subject="part",
    what="A rack that does not conduct goes where current is to flow.",
    why="No current reaches the part, and nothing is plated.",
    bad="""- {id: rack-white, do: mount, rack: white-rack, say: Put the board in the white plastic rack.}
- {id: copper-in, do: put-in, at: copper, power: {to: 5 A}, for: 50 min, say: Hang the board in.}""",
    good="""- {id: rack-hook, do: mount, rack: hook-rack, say: Move the board to the hook rack.}
- {id: copper-in, do: put-in, at: copper, power: {to: 5 A}, for: 50 min, say: Hang the board in.}""",
    needs=(
        "part",
        "racks",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every step that switches current on, against the rack that the part hangs on."""
    for moment in moments(study):
        if moment.step.power is None:
            continue
        id = moment.before.text("rack")
        rack = study.lab.racks.get(id)  # type: ignore[call-overload]
        if rack is not None and rack.conducts is False:
            conducting = [name for name, other in study.lab.racks.items() if other.conducts]
            yield found_at(
                DOC,
                moment,
                f"current is to flow, but the {part(study)} hangs in the {called(study, id)}, "
                "which insulates",
                f"mount it on a rack that conducts ({called(study, *conducting)}) before this step",
                moment.before.cause("rack"),
                label=f"mounted {since_when(study, moment.before.atom('rack').since)}",
            )


RULE = Rule(DOC, in_procedure=find)
