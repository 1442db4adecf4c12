"""A field that does not exist."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="unknown-key",
    level=Level.ERROR,
    subject="words",
    what="A noun or a step has no field of this name.",
    why="A misspelt field would be left out in silence, and with it what it says.",
    bad="- {id: blow, dos: dry, at: blower, say: Dry both faces.}",
    good="- {id: blow, do: dry, at: blower, say: Dry both faces.}",
)

RULE = Rule(DOC, found_by="reading")
