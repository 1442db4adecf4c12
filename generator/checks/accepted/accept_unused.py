"""An entry under `accept` whose warning is not raised any more."""

from generator.checks.rule import Rule
from generator.model import Accept
from generator.problems import Level, Problem, RuleDoc

DOC = RuleDoc(
    id="accept-unused",
    level=Level.WARNING,
    subject="accepted",
    what="An `accept` entry names a warning that is not raised (any more).",
    why="A reason kept for a warning that is gone hides the next one of its kind.",
    bad="""accept:
  - rule: gloves-on-clean-thing
    step: dry-2                   # the gloves touch the light table at see-dry
    who: instructor
    until: 2027-06-30
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
        entry.where,
        f'no warning "{entry.rule}" is raised here, so there is nothing to accept',
        "delete the entry, or name the step where the warning stands",
        step=step,
    )


RULE = Rule(DOC, found_by="pipeline")
