"""Rules about words and form."""

from generator.checks.rule import Rule

RULES: tuple[Rule, ...] = ()
