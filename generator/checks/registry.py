"""All rules, by subject, as one literal tuple."""

from generator.checks import accepted, chemicals, part, people, person, places, posting, sums, time, words
from generator.checks.rule import Rule
from generator.problems import RuleDoc

RULES: tuple[Rule, ...] = (
    *part.RULES,
    *person.RULES,
    *places.RULES,
    *time.RULES,
    *people.RULES,
    *chemicals.RULES,
    *words.RULES,
    *sums.RULES,
    *posting.RULES,
    *accepted.RULES,
)


def docs() -> tuple[RuleDoc, ...]:
    """The documents of all rules, in order."""
    return tuple(rule.doc for rule in RULES)
