"""Rules about issues, approval and laminated copies; all but one are found by the posting floor."""

from generator.checks.posting import (
    approves_own,
    copy_stale,
    id_changed,
    issue_altered,
    posted_without_approver,
    review_overdue,
)

RULES = (
    approves_own.RULE,
    posted_without_approver.RULE,
    issue_altered.RULE,
    id_changed.RULE,
    copy_stale.RULE,
    review_overdue.RULE,
)
