"""A line indented with a tab."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="tab-indent",
    level=Level.ERROR,
    subject="words",
    what="A line is indented with a tab; only spaces indent.",
    why="How wide a tab is depends on the editor, so what belongs together cannot be told.",
    bad="""steps:
	- id: soak-in""",
    good="""steps:
  - id: soak-in""",
    source="YAML 1.2.2, section 6.1 (indentation spaces); from memory",
)

RULE = Rule(DOC, found_by="reading")
