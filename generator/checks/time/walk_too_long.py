"""A procedure is too long or too branchy to be walked in full."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import MOST_MOMENTS, MOST_STEPS

DOC = RuleDoc(
    id="walk-too-long",
    level=Level.ERROR,
    subject="time",
    what="The procedure has more than 500 visits of steps, or its redos lead to more than 20,000 moments.",
    why="What was not walked was not checked, and a card of that length is not read.",
    bad="""stages: []   # 2,000 steps in one procedure""",
    good="""stages: []   # several procedures of some 60 steps each""",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem where the walk stopped at its bound."""
    if not study.walk.finished:
        count = len(study.procedure.steps)
        yield DOC.found(
            study.procedure.spot("title"),
            f"the procedure has {count} steps, and with its repeats and redos the walk stopped at its bound "
            f"({MOST_STEPS} visits, {MOST_MOMENTS:,} moments): it was not checked in full",
            "split it into several procedures, or let fewer checks go back to the beginning",
        )


RULE = Rule(DOC, in_procedure=find)
