"""A procedure that nobody has looked at again in time."""

import datetime

from generator.checks.rule import Rule
from generator.problems import Level, Location, Problem, RuleDoc

DOC = RuleDoc(
    id="review-overdue",
    level=Level.WARNING,
    subject="posting",
    what=(
        "More than `review_every` has passed since the procedure was last posted or reviewed. Its page "
        "shows a banner."
    ),
    why="Rooms, supplies and people change while the paper stays the same.",
    bad="review_every: 12 months   # and last posted two years ago",
    good="review_every: 12 months   # and posted this year",
)


def at(where: Location, posted: datetime.date, due: datetime.date, approver: str) -> Problem:
    """The problem of one procedure: when it was posted, when the review was due, the role that approves."""
    return DOC.found(
        where,
        f"the review was due on {due}; the procedure was last posted on {posted}",
        f"read it at the bench, then post it again with the approval of {approver}; with `--review` where "
        "nothing had to change",
    )


RULE = Rule(DOC, found_by="posting")
