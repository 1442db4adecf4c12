"""A language file that holds more than sentences."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="side-file-holds-values",
    level=Level.ERROR,
    subject="words",
    what="A language file holds a time, a place, a setting or anything else that is no sentence.",
    why=(
        "A number that stands in two languages is two numbers after the next edit. Values come from the "
        "procedure alone."
    ),
    bad="""language: es
steps:
  in: {say: Baje la placa., for: 7 min}""",
    good="""language: es
steps:
  in: {say: Baje la placa.}""",
)

RULE = Rule(DOC, found_by="reading")
