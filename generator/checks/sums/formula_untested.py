"""A formula without a worked example."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="formula-untested",
    level=Level.ERROR,
    subject="sums",
    what="A formula, the lab's own too, has no worked example.",
    why="A formula that nobody has worked out by hand once is a guess with decimals.",
    bad='''def mix_ratio(resin, parts_a=100, parts_b=32):
    """Mass of part B for a mass of part A."""
    return resin * parts_b / parts_a''',
    good='''def mix_ratio(resin, parts_a=100, parts_b=32):
    """Mass of part B for a mass of part A.

    >>> round(mix_ratio(182), 2)
    58.24
    """
    return resin * parts_b / parts_a''',
)

RULE = Rule(DOC, found_by="formulas")
