"""A field given twice."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="given-twice",
    level=Level.ERROR,
    subject="words",
    what="The same field is given twice in one place, or two files give the same noun of the lab.",
    why="Only one of the two counts, and a reader cannot know which.",
    bad="""- id: soak-in
  do: put-in
  for: 8 min
  for: 6 min""",
    good="""- id: soak-in
  do: put-in
  for: 8 min""",
    source="YAML 1.2.2, section 3.2.1.3 (keys are unique); from memory",
)

RULE = Rule(DOC, found_by="reading")
