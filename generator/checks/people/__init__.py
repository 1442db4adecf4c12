"""Rules about people, decisions and names."""

from generator.checks.people import no_emergency_line

RULES = (no_emergency_line.RULE,)
