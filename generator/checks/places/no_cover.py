"""A step opens a place that has nothing to open."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="no-cover",
    level=Level.ERROR,
    subject="places",
    what="A step opens or closes a place that declares neither a lid nor a door.",
    why="Whether a lid is still on, was left off, or hid something to look at is judged only where the place "
    "says that it has one.",
    bad="""places:
  soak: {number: 1, title: Cleaner}
steps:
  - {id: open-1, do: open, at: soak, say: Lid off.}""",
    good="""places:
  soak: {number: 1, title: Cleaner, cover: lid}
steps:
  - {id: open-1, do: open, at: soak, say: Lid off.}""",
    needs=("places",),
)

_DONE = {"open": "opened", "close": "closed"}


def find(study: Study) -> Iterator[Problem]:
    """One problem a place, at the first step that opens or closes it."""
    told: set[str] = set()
    for step in (found.step for found in study.steps()):
        id, place = str(step.at), study.place(step.at)
        if step.do in _DONE and place and place.cover is None and id not in told:
            told.add(id)
            yield DOC.found(
                step.spot("at"),
                f"{called(study, id)} is {_DONE[str(step.do)]} here, and has neither lid nor door",
                f"write `cover: lid` or `cover: door` on `{id}` under `places`, or `do: act` here",
                step=str(step.id),
                place=id,
            )


RULE = Rule(DOC, in_procedure=find)
