"""Rules about the workpiece."""

from generator.checks.rule import Rule

RULES: tuple[Rule, ...] = ()
