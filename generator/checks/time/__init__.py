"""Rules about time."""

from generator.checks.rule import Rule

RULES: tuple[Rule, ...] = ()
