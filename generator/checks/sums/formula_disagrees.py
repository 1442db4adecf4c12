"""A formula and its worked example that do not agree."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="formula-disagrees",
    level=Level.ERROR,
    subject="sums",
    what="A formula gives something else than its worked example, or Python and the page differ.",
    why=(
        "One of the two is wrong, and nobody can tell which. A wrong number on a wall card is worse than "
        "none."
    ),
    bad='''def mix_ratio(resin, parts_a=100, parts_b=32):
    """Mass of part B for a mass of part A.

    >>> round(mix_ratio(182), 2)
    68.24
    """
    return resin * parts_b / parts_a''',
    good='''def mix_ratio(resin, parts_a=100, parts_b=32):
    """Mass of part B for a mass of part A.

    >>> round(mix_ratio(182), 2)
    58.24
    """
    return resin * parts_b / parts_a''',
)

RULE = Rule(DOC, found_by="formulas")
