"""The lab names no emergency line."""

from collections.abc import Iterator

from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy

DOC = RuleDoc(
    id="no-emergency-line",
    level=Level.ERROR,
    subject="people",
    what="`lab.help.emergency` is missing: nobody can read on a card whom to ring.",
    why="In an emergency nobody looks for a number. It stands on every card.",
    bad="""lab:
  name: Larkmere Technical College
  room: B14
  help: {first_aid: wall box}""",
    good="""lab:
  name: Larkmere Technical College
  room: B14
  help: {emergency: "Campus emergency line, extension 800"}""",
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem where the line is missing."""
    room = study.lab.lab
    if room.help.emergency is None:
        yield DOC.found(
            room.spot("help"),
            "no emergency line is named",
            "write under `lab`, `help`: a line `emergency: ...` with what to ring",
            label="help stands here",
        )


RULE = Rule(DOC, in_lab=find)
