"""Rules about sums, units and cards."""

from generator.checks.sums import (
    card_drops_hazard,
    card_stage_unknown,
    card_too_small,
    formula_disagrees,
    formula_untested,
    limit_broken_by_job,
    number_typed_twice,
    outside_usual,
    stage_on_no_card,
    unit_missing,
    unit_unusual,
    vendor_differs_unsigned,
)

RULES = (
    unit_missing.RULE,
    unit_unusual.RULE,
    number_typed_twice.RULE,
    outside_usual.RULE,
    limit_broken_by_job.RULE,
    formula_untested.RULE,
    formula_disagrees.RULE,
    card_too_small.RULE,
    card_drops_hazard.RULE,
    card_stage_unknown.RULE,
    stage_on_no_card.RULE,
    vendor_differs_unsigned.RULE,
)
