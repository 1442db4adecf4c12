"""A class that changes more than its own values."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="class-changes-order",
    level=Level.ERROR,
    subject="words",
    what=(
        "A class's file brings, drops or re-orders steps, or changes a verb, a place, a sentence, a "
        "check or what follows a failed check."
    ),
    why=("The order was checked and learnt once. A class that needs another order is another procedure."),
    bad="""class_of: clean-a-plate
steps:
  in: {do: wait}""",
    good="""class_of: clean-a-plate
steps:
  in: {for: 6 min}""",
)

RULE = Rule(DOC, found_by="reading")
