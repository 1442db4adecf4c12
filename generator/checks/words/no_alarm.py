"""A time that nothing sounds at the end of."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="no-alarm",
    level=Level.ERROR,
    subject="words",
    what="A put-in, a wait or a setting lasts for a time, and neither the step nor its place names a timer.",
    why="A time that nothing sounds for is a time that is overrun.",
    bad="- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}  # soak has no timer",
    good="- {id: soak-in, do: put-in, at: soak, for: 8 min, alarm: bench-b, say: Lower the board in.}",
    needs=("timers",),
)
TIMED = ("put-in", "wait", "set")


def find(study: Study) -> Iterator[Problem]:
    """Timed steps."""
    for found in study.steps():
        step = found.step
        place = study.place(step.at)
        if step.for_ is None or step.do not in TIMED or step.alarm or (place and place.timer):
            continue
        if place is None and "at" in step.marks:
            continue  # the place that is meant may well have a timer, and its name is told as unknown
        at = f" at {place.title}" if place else ""
        names = ", ".join(f"`{id}`" for id in study.lab.timers)
        yield DOC.found(
            step.spot("for"),
            f"the step lasts for a time{at}, and no timer sounds at its end",
            f"write `alarm: ...` with a timer ({names}), or `timer: ...` on the place",
            step=str(step.id),
        )


RULE = Rule(DOC, in_procedure=find)
