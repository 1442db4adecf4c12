"""Rules about substances, mixtures and waste."""

from generator.checks.rule import Rule

RULES: tuple[Rule, ...] = ()
