"""A posted file that is not as it was written."""

from generator.checks.rule import Rule
from generator.problems import Level, Location, Problem, RuleDoc

DOC = RuleDoc(
    id="issue-altered",
    level=Level.ERROR,
    subject="posting",
    what="A file under `posted/` was changed by hand, or an issue between two others is gone.",
    why="An issue says what was approved. A changed one says what nobody has approved.",
    bad="# procedures/posted/clean-a-plate/1.yml, with a time typed over",
    good="# procedures/posted/clean-a-plate/1.yml, as `newel post` wrote it, and beside it 2.yml",
)


def at(where: Location, what: str) -> Problem:
    """The problem of one file, and what is wrong with it."""
    return DOC.found(
        where,
        f"the posted file {what}",
        "take the file back from the copy that you keep of it, and edit the procedure instead",
    )


RULE = Rule(DOC, found_by="posting")
