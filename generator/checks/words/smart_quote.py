"""Typographic quotes where YAML needs straight ones."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="smart-quote",
    level=Level.ERROR,
    subject="words",
    what="A value stands in curly quotes, which YAML takes for letters.",
    why="The quotes would be printed, and the text between them is not protected from `: ` and ` #`.",
    bad="say: “Rinse both faces.”",
    good='say: "Rinse both faces."',
)

RULE = Rule(DOC, found_by="reading")
