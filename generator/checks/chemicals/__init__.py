"""Rules about chemicals, what stands together, and where it ends."""

from generator.checks.chemicals import (
    acid_then_base,
    cas_digit,
    concentrate_in_student_step,
    extraction_missing,
    hazard_dropped,
    hazard_screen,
    hazard_silent,
    keep_apart,
    mixture_left,
    no_eyewash,
    sealed_gas_maker,
    sheet_old,
    statement_unknown,
    to_drain_undecided,
    waste_unhoused,
    water_into_acid,
)

RULES = (
    sealed_gas_maker.RULE,
    extraction_missing.RULE,
    acid_then_base.RULE,
    keep_apart.RULE,
    hazard_dropped.RULE,
    hazard_screen.RULE,
    hazard_silent.RULE,
    statement_unknown.RULE,
    cas_digit.RULE,
    sheet_old.RULE,
    concentrate_in_student_step.RULE,
    water_into_acid.RULE,
    mixture_left.RULE,
    waste_unhoused.RULE,
    to_drain_undecided.RULE,
    no_eyewash.RULE,
)
