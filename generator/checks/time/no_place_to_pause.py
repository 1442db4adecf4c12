"""Long work has nowhere to stop."""

from collections.abc import Iterator

from generator.checks.evidence.moments import minutes
from generator.checks.evidence.sessions import session_times
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import stretches

DOC = RuleDoc(
    id="no-place-to-pause",
    level=Level.NOTE,
    subject="time",
    what="The work is longer than a session and has no `pause`.",
    why="Something always comes between.",
    bad="""stages: []   # three hours of steps, none with a pause""",
    good="""- {id: see-black, do: check, at: light, say: Look at every hole., check: even black,
   pause: {keep: dry in a bag, time: up to 3 days}}""",
    needs=("sessions",),
)


def find(study: Study) -> Iterator[Problem]:
    """The whole run against the shortest session, where no step says pause."""
    if any(step.pause for step in study.procedure.steps):
        return
    seconds = sum(stretch.seconds for stretch in stretches(study.walk))
    shortest = min((time for _, time in session_times(study)), default=seconds)
    if seconds > shortest:
        yield DOC.found(
            study.procedure.spot("title"),
            f"the work takes {minutes(seconds)} and may stop nowhere",
            "look for a step behind which the part is dry and safe, and write `pause: "
            "{keep: ..., time: ...}`",
        )


RULE = Rule(DOC, in_procedure=find)
