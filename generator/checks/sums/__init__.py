"""Rules about sums, units and cards."""

from generator.checks.sums import (
    approves_own,
    card_stage_unknown,
    limit_broken_by_job,
    number_typed_twice,
    outside_usual,
    stage_on_no_card,
    unit_missing,
    unit_unusual,
    vendor_differs_unsigned,
)

# `copy_stale`, `review_overdue` and `posted_without_approver` wait for the posting floor, `card_too_small`
# and `card_drops_hazard` for the press, `formula_untested` and `formula_disagrees` for a lab's own formulas.
RULES = (
    unit_missing.RULE,
    unit_unusual.RULE,
    number_typed_twice.RULE,
    outside_usual.RULE,
    limit_broken_by_job.RULE,
    card_stage_unknown.RULE,
    stage_on_no_card.RULE,
    vendor_differs_unsigned.RULE,
    approves_own.RULE,
)
