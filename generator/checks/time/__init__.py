"""Rules about time."""

from generator.checks.rule import Rule
from generator.checks.time import (
    dwell_at_edge,
    dwell_outside,
    fits_no_session,
    hold_while_clock_runs,
    left_alone_too_long,
    longer_than_a_session,
    no_place_to_pause,
    redo_makes_trouble,
    timer_clash,
    too_early,
    too_late,
    use_within,
    walk_too_long,
)

RULES: tuple[Rule, ...] = (
    too_late.RULE,
    too_early.RULE,
    use_within.RULE,
    dwell_outside.RULE,
    dwell_at_edge.RULE,
    left_alone_too_long.RULE,
    fits_no_session.RULE,
    longer_than_a_session.RULE,
    hold_while_clock_runs.RULE,
    no_place_to_pause.RULE,
    timer_clash.RULE,
    redo_makes_trouble.RULE,
    walk_too_long.RULE,
)
