"""A file that is not UTF-8 text."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="not-utf8",
    level=Level.ERROR,
    subject="words",
    what="The file holds bytes that are not UTF-8.",
    why=(
        "Signs such as ° and µ would turn into others, and a number with the wrong sign is worse than none."
    ),
    bad="""# saved as Windows-1252
temperature: 42 to 48 °C""",
    good="""# saved as UTF-8
temperature: 42 to 48 °C""",
    source="RFC 3629 (UTF-8)",
)

RULE = Rule(DOC, found_by="reading")
