"""Rules about sums and cards."""

from generator.checks.rule import Rule

RULES: tuple[Rule, ...] = ()
