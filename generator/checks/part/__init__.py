"""Rules about the workpiece."""

from generator.checks.part import (
    air_not_cleared,
    arrives_dry,
    arrives_wet,
    cannot_dry,
    ends_dirty,
    hot_handling,
    left_in_place,
    mains_after_last,
    no_rack,
    not_inspected_before_costly,
    nothing_there,
    part_in_two_places,
    rack_insulates,
    rack_too_hot,
    residue_not_allowed,
    rinse_too_short,
)
from generator.checks.rule import Rule

RULES: tuple[Rule, ...] = (
    residue_not_allowed.RULE,
    mains_after_last.RULE,
    arrives_wet.RULE,
    arrives_dry.RULE,
    rinse_too_short.RULE,
    ends_dirty.RULE,
    nothing_there.RULE,
    part_in_two_places.RULE,
    left_in_place.RULE,
    cannot_dry.RULE,
    no_rack.RULE,
    rack_insulates.RULE,
    rack_too_hot.RULE,
    air_not_cleared.RULE,
    not_inspected_before_costly.RULE,
    hot_handling.RULE,
)
