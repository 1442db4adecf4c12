"""Rules about the person."""

from generator.checks.person import (
    bare_at_place,
    dirty_gloves,
    gloves_on_clean_thing,
    gloves_to_nowhere,
    hands_unwashed,
    layer_missing,
    off_too_soon,
    on_and_off,
    still_wearing,
)
from generator.checks.rule import Rule

RULES: tuple[Rule, ...] = (
    bare_at_place.RULE,
    layer_missing.RULE,
    off_too_soon.RULE,
    dirty_gloves.RULE,
    gloves_on_clean_thing.RULE,
    still_wearing.RULE,
    hands_unwashed.RULE,
    gloves_to_nowhere.RULE,
    on_and_off.RULE,
)
