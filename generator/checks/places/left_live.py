"""The run ends with current or elements on."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at_end
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="left-live",
    level=Level.ERROR,
    subject="places",
    what="A place is live when the run ends.",
    why="A rectifier left on is found by whoever reaches in next.",
    bad="""- {id: copper-in, do: put-in, at: copper, power: {to: 5 A}, for: 50 min,
   say: Hang the board in.}   # and no switch-off""",
    good="""- {id: power-down, do: switch-off, at: copper, say: Turn the current to zero.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """What is live at the end of every path."""
    for end in study.walk.ends:
        for id in sorted(end.state.names("live")):
            since = end.state.atom("live", id).since
            yield found_at_end(
                DOC,
                study,
                end,
                since,
                f"{called(study, id)} is still live at the end",
                f"put a `do: switch-off` step at {id} behind {since}",
                end.state.cause("live", id),
            )


RULE = Rule(DOC, in_procedure=find)
