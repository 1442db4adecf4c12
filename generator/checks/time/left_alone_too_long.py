"""Something runs alone longer than the timer or the sign allows."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, minutes, moments
from generator.checks.evidence.stays import timer_of
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import show_quantity

DOC = RuleDoc(
    id="left-alone-too-long",
    level=Level.WARNING,
    subject="time",
    what=(
        "A step is longer than the `at_most` of its timer, or nobody is there for longer than "
        "`unattended_at_most` of the lab."
    ),
    why="A timer that cannot be set so long rings early or not at all, and a door sign has a time on it.",
    bad="""- {id: cure, do: put-in, at: oven, for: 6 h, stay: away,
   say: Put the mould on the shelf.}   # timers: oven-timer: at_most: 2 h""",
    good="""- {id: cure, do: put-in, at: oven, for: 90 min, stay: away, say: Put the mould on the shelf.}""",
    needs=("timers",),
)


def find(study: Study) -> Iterator[Problem]:
    """Each timed step of the straight run."""
    sign = study.lab.lab.unattended_at_most
    for moment in moments(study, straight=True):
        time = study.sums.time_of(moment.step)
        timer = study.lab.timers.get(timer_of(study, moment))  # type: ignore[call-overload]
        if time is None:
            continue
        if timer and timer.at_most and time.si > timer.at_most.si:
            yield found_at(
                DOC,
                moment,
                f"{minutes(time.si)} is longer than {called(study, timer_of(study, moment))} can be set to "
                f"({show_quantity(timer.at_most)})",
                "use another timer, or split the time",
            )
        if sign and moment.step.stay == "away" and time.si > sign.si:
            yield found_at(
                DOC,
                moment,
                f"nobody is there for {minutes(time.si)}, and the lab allows {show_quantity(sign)}",
                "write `stay: near`, or ask the role that answers for the sign",
            )


RULE = Rule(DOC, in_procedure=find)
