"""An entry under `accept` that names an error."""

from generator.checks.rule import Rule
from generator.model import Accept
from generator.problems import Level, Problem, RuleDoc

DOC = RuleDoc(
    id="accept-of-error",
    level=Level.ERROR,
    subject="accepted",
    what="An `accept` entry names an error; only warnings can be accepted.",
    why="An error is what would hurt someone or ruin work.",
    bad="""accept:
  - rule: lid-still-on
    step: soak-in
    who: instructor
    until: 2027-06-30
    because: The lid is light.""",
    good="""accept:
  - rule: gloves-on-clean-thing
    step: see-dry
    who: instructor
    until: 2027-06-30
    because: The light table counts as wet.""",
)


def at(entry: Accept) -> Problem:
    """The problem of one entry."""
    step = str(entry.step or "")
    return DOC.found(
        entry.spot("rule"),
        f'"{entry.rule}" is an error, and an error cannot be accepted',
        "mend the step, and delete the entry",
        step=step,
    )


RULE = Rule(DOC, found_by="pipeline")
