"""A stretch of work fits some sessions, not all."""

from collections.abc import Iterator

from generator.checks.evidence.moments import minutes
from generator.checks.evidence.sessions import longest_step, session_times
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import stretches

DOC = RuleDoc(
    id="longer-than-a-session",
    level=Level.WARNING,
    subject="time",
    what="The longest stretch between two pauses fits some sessions, but not this one.",
    why="A student who starts in the short session has to stop half-way.",
    bad="""lab: {sessions: [{name: Tuesday, from: 13:10, until: 14:00}, {name: Thursday, from: 10:00,
   until: 16:00}]}""",
    good="""- {id: see-black, do: check, at: light, say: Look at every hole., check: even black,
   pause: {keep: dry in a bag, time: up to 3 days}}""",
    needs=("sessions",),
)


def find(study: Study) -> Iterator[Problem]:
    """The longest stretch against each session."""
    longest = max(stretches(study.walk), key=lambda stretch: stretch.seconds, default=None)
    sessions = session_times(study)
    short = [name for name, seconds in sessions if longest and longest.seconds > seconds]
    if longest and short and len(short) < len(sessions):
        yield DOC.found(
            study.procedure.spot("title"),
            f"from {longest.first} to {longest.last} there are {minutes(longest.seconds)} without a pause, "
            f"too long for {' and '.join(short)}; {longest_step(longest)}",
            "put a `pause:` on a step where the part is safe, or accept it and say in `plan` "
            "which session to book",
            step=longest.first,
        )


RULE = Rule(DOC, in_procedure=find)
