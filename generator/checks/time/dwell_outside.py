"""The part stays too short or too long in a place."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, minutes, part, since_when
from generator.checks.evidence.stays import stays
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import show_window

DOC = RuleDoc(
    id="dwell-outside",
    level=Level.ERROR,
    subject="time",
    what="From put-in to take-out, steps between counted, the time lies outside the `time` of the place.",
    why="Too short does nothing, too long eats the work.",
    bad="""- {id: soak-in, do: put-in, at: soak, for: 40 min,
   say: Lower the board in.}   # time: 6 to 10 min""",
    good="""- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every stay, on every path."""
    for moment, id, window, shortest, longest in stays(study):
        low, high = window.low, window.high
        short = low is not None and shortest < low.si * (1 - 1e-9)
        long = high is not None and longest > high.si * (1 + 1e-9)
        if short or long:
            since = moment.before.atom("in").since
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} stays {minutes(shortest if short else longest)} in {called(study, id)}; "
                f"the window is {show_window(window)}",
                f"change `for` of step {since}" + (", or move steps out from between" if long else ""),
                moment.before.cause("entered"),
                label=f"put in {since_when(study, since)}",
            )


RULE = Rule(DOC, in_procedure=find)
