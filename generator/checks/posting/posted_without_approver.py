"""An issue that was posted without the role that approves it."""

from generator.checks.rule import Rule
from generator.problems import Level, Location, Problem, RuleDoc

DOC = RuleDoc(
    id="posted-without-approver",
    level=Level.ERROR,
    subject="posting",
    what="A posted issue changes more than wording, and the procedure's approver did not approve it.",
    why=(
        "A new time, limit, chemical or order on the wall is somebody's decision, and it must be the right "
        "somebody's."
    ),
    bad="# copper-the-holes, issue 4: a time changed, approved_by: technician; the approver is instructor",
    good="# copper-the-holes, issue 4: a time changed, approved_by: instructor",
)


def at(where: Location, issue: str, approver: str, approved_by: str = "") -> Problem:
    """The problem of one issue: its number, the role that should have approved it, the one that did."""
    who = f"by {approved_by}" if approved_by else "by nobody"
    return DOC.found(
        where,
        f"issue {issue} changes more than wording and was approved {who}; its approver is {approver}",
        f"withdraw it, or post it again with `--approved-by {approver}`",
    )


RULE = Rule(DOC, found_by="posting")
