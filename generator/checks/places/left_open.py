"""A lid, or a door that a step opened, is open at the end."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at_end
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="left-open",
    level=Level.ERROR,
    subject="places",
    what="A place that a step opened is still open when the run ends.",
    why="Vapour, dirt, and a bath that somebody leans into.",
    bad="""- {id: open-1, do: open, at: soak, say: Lid off.}   # and no close behind it""",
    good="""- {id: open-1, do: open, at: soak, say: Lid off.}
- {id: close-1, do: close, at: soak, say: Lid on.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """What is open at the end of every path."""
    for end in study.walk.ends:
        for id in sorted(end.state.names("open")):
            since = end.state.atom("open", id).since
            yield found_at_end(
                DOC,
                study,
                end,
                since,
                f"{called(study, id)} is still open at the end",
                f"put a `do: close` step at {id} behind the last work there",
                end.state.cause("open", id),
            )


RULE = Rule(DOC, in_procedure=find)
