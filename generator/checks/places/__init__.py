"""Rules about places and machines."""

from generator.checks.rule import Rule

RULES: tuple[Rule, ...] = ()
