"""A stay is close to the edge of the window."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, minutes, part
from generator.checks.evidence.stays import stays
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import show_window

DOC = RuleDoc(
    id="dwell-at-edge",
    level=Level.WARNING,
    subject="time",
    what="Inside the window, but nearer to an edge than a tenth of it.",
    why="A slow hand or a wrong clock carries it over the edge.",
    bad="""- {id: soak-in, do: put-in, at: soak, for: 9.9 min,
   say: Lower the board in.}   # time: 6 to 10 min""",
    good="""- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Each stay on the straight run whose window has two edges."""
    for moment, id, window, shortest, longest in stays(study):
        low, high = window.low, window.high
        if not moment.straight or low is None or high is None or shortest != longest:
            continue
        margin, inside = (high.si - low.si) / 10, low.si <= shortest <= high.si
        if inside and min(shortest - low.si, high.si - shortest) < margin - 1e-6:
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} stays {minutes(shortest)} in {called(study, id)}, close to the edge of "
                f"{show_window(window)}",
                f"move `for` of step {moment.before.atom('in').since} towards the middle of the window",
            )


RULE = Rule(DOC, in_procedure=find)
