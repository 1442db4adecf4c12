"""A quantity without an allowed unit."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="unit-missing",
    level=Level.ERROR,
    subject="sums",
    what=(
        "A field that holds a quantity or a window has no number, no allowed unit, or the wrong kind of unit."
    ),
    why=(
        "A bare 8 may be seconds or minutes, and 3,5 or 6–10 is read differently by different people. "
        "A wrong number on a wall card is worse than none."
    ),
    bad="for: 8",
    good="for: 8 min",
    source=("NIST SP 811 (2008), section 7.2: the value of a quantity is a number and a unit; from memory"),
)

RULE = Rule(DOC, found_by="reading")
