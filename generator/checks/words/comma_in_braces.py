"""A comma inside braces that cuts a sentence."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="comma-in-braces",
    level=Level.ERROR,
    subject="words",
    what="Inside `{ }` a comma ends the value, so what follows is taken for a field without a value.",
    why="The sentence loses its end, and the loss is silent.",
    bad="fail: {say: Lid on, then wait at the door., call: technician}",
    good='fail: {say: "Lid on, then wait at the door.", call: technician}',
    source="YAML 1.2.2, section 7.4 (flow collections); from memory",
)

RULE = Rule(DOC, found_by="reading")
