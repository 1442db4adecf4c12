"""An entry under `accept` whose day has passed."""

from generator.checks.rule import Rule
from generator.model import Accept
from generator.problems import Level, Problem, RuleDoc

DOC = RuleDoc(
    id="accept-expired",
    level=Level.WARNING,
    subject="accepted",
    what="The day `until` of an `accept` entry has passed, so its warning stands again.",
    why="What a lab lives with is looked at again from time to time.",
    bad="""accept:
  - rule: gloves-on-clean-thing
    step: see-dry
    who: instructor
    until: 2025-06-30
    because: The light table counts as wet.""",
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
        entry.spot("until"),
        f'the reason for living with "{entry.rule}" ran out on {entry.until}',
        f"look at it again: mend the cause, or have {entry.who} set a new day",
        step=step,
    )


RULE = Rule(DOC, found_by="pipeline")
