"""Rules about the person."""

from generator.checks.rule import Rule

RULES: tuple[Rule, ...] = ()
