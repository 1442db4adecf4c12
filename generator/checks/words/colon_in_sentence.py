"""A colon with a space inside a sentence without quotes."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="colon-in-sentence",
    level=Level.ERROR,
    subject="words",
    what="A sentence without quotes holds `: `, which YAML takes for a field and its value.",
    why="The file cannot be read, or one sentence turns into a field that nobody meant.",
    bad="say: Look at both faces: no film.",
    good='say: "Look at both faces: no film."',
    source="YAML 1.2.2, section 7.3.3 (plain style); from memory",
)

RULE = Rule(DOC, found_by="reading")
