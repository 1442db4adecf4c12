"""Text lost behind a `#`."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="text-cut",
    level=Level.ERROR,
    subject="words",
    what="A sentence goes on behind ` #`, where YAML starts a comment, so the rest is lost.",
    why="The card would show half a sentence, and nobody would see that the other half is missing.",
    bad="""steps:
  - id: mark
    say: Mark the part with tag #3 and hang it up.
    do: act""",
    good="""steps:
  - id: mark
    say: "Mark the part with tag #3 and hang it up."
    do: act""",
    source="YAML 1.2.2, section 6.6 (comments); from memory",
)

RULE = Rule(DOC, found_by="reading")
