"""Text that cannot be understood."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="unreadable",
    level=Level.ERROR,
    subject="words",
    what=(
        "The text cannot be read here: a bracket that never closes, indentation that fits nothing, "
        "words where a list or fields belong."
    ),
    why="What is not understood is refused, never guessed at.",
    bad="put_on: nitrile",
    good="put_on: [nitrile]",
)

RULE = Rule(DOC, found_by="reading")
