"""A value that begins with a sign of YAML."""

from generator.checks.rule import Rule
from generator.problems import Level, RuleDoc

DOC = RuleDoc(
    id="yaml-sign",
    level=Level.ERROR,
    subject="words",
    what=(
        "A value begins with one of > < - % @ * & ! or a backtick, or a tag, anchor or alias stands "
        "in the file."
    ),
    why="YAML gives these signs a meaning of its own; the text would be changed or lost.",
    bad="record: {film: < 0.1 mm}",
    good="record: {film: up to 0.1 mm}",
    source="YAML 1.2.2, section 5.3 (indicators); from memory",
)

RULE = Rule(DOC, found_by="reading")
