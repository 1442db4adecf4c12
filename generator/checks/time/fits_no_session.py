"""A stretch of work is longer than any session."""

from collections.abc import Iterator

from generator.checks.evidence.moments import minutes
from generator.checks.evidence.sessions import longest_step, session_times
from generator.checks.rule import Rule
from generator.problems import Cause, Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import stretches

DOC = RuleDoc(
    id="fits-no-session",
    level=Level.ERROR,
    subject="time",
    what="The longest stretch between two pauses fits no session, pack-up included.",
    why="The work is stopped half-way, with a wet part and an open bath.",
    bad="""lab: {sessions: [{name: Tuesday, from: 13:10,
   until: 14:00}]}   # and two hours of work without a pause""",
    good="""- {id: see-black, do: check, at: light, say: Look at every hole., check: even black,
   pause: {keep: dry in a bag, time: up to 3 days}}""",
    needs=("sessions",),
)


def find(study: Study) -> Iterator[Problem]:
    """The longest stretch against the longest session."""
    longest = max(stretches(study.walk), key=lambda stretch: stretch.seconds, default=None)
    room = max(session_times(study), key=lambda session: session[1], default=None)
    if longest and room and longest.seconds > room[1]:
        yield DOC.found(
            study.procedure.spot("title"),
            f"from {longest.first} to {longest.last} there are {minutes(longest.seconds)} without a pause; "
            f"the longest session ({room[0]}) leaves {minutes(room[1])}; {longest_step(longest)}",
            "put a `pause:` on a step where the part is safe, or make the work shorter",
            step=longest.first,
            causes=(Cause("session", longest.first),),
        )


RULE = Rule(DOC, in_procedure=find)
