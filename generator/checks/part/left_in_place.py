"""The run ends with the part in a bath, oven or press."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at_end, part
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="left-in-place",
    level=Level.ERROR,
    subject="part",
    what="The run ends while the part is still in a place.",
    why="A part that is forgotten in a bath is ruined, and so may be the bath.",
    bad="""- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}   # the last step""",
    good="""- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}
- {id: soak-out, do: take-out, at: soak, say: Lift slowly.}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """The end of every path."""
    for end in study.walk.ends:
        where = end.state.text("in")
        if where:
            since = end.state.atom("in").since
            yield found_at_end(
                DOC,
                study,
                end,
                since,
                f"the run ends with the {part(study)} in {called(study, where)}",
                f"put a `do: take-out` step at {where} behind {since}",
                end.state.cause("in"),
            )


RULE = Rule(DOC, in_procedure=find)
