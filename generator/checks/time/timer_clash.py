"""One timer is needed twice at once."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, moments, part
from generator.checks.evidence.stays import timer_of
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="timer-clash",
    level=Level.WARNING,
    subject="time",
    what="A timer still runs for a part in a place when a later step needs the same timer.",
    why="One of the two is forgotten.",
    bad="""- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}
- {id: stir, do: wait, for: 3 min, alarm: bench-b, say: Wait for the bell.}
- {id: soak-out, do: take-out, at: soak, say: Lift slowly.}""",
    good="""- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}
- {id: soak-out, do: take-out, at: soak, say: Lift slowly.}""",
    needs=(
        "timers",
        "part",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Each timed step of the straight run while the part sits in a place with the same timer."""
    for moment in moments(study, straight=True):
        where = moment.before.text("in")
        place = study.place(where)
        timer = timer_of(study, moment)
        if not timer or moment.step.for_ is None or moment.step.do == "take-out" or place is None:
            continue
        if where != moment.step.at and str(place.timer or "") == timer:
            yield found_at(
                DOC,
                moment,
                f"{called(study, timer)} is still set for the {part(study)} in {called(study, where)}",
                "name another timer under `alarm`",
                moment.before.cause("in"),
            )


RULE = Rule(DOC, in_procedure=find)
