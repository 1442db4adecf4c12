"""A tray is full at the end."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at_end
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="tray-left-full",
    level=Level.ERROR,
    subject="places",
    what="What was sprayed stays in a tray until a step empties it; at the end of the run it is still there.",
    why="The next person rinses into it.",
    bad="""- {id: rinse-6, do: rinse, at: di, for: 120 s, waste: drum-c,
   say: Spray both sides.}   # and no empty behind it""",
    good="""- {id: rinse-6, do: rinse, at: di, for: 120 s, waste: drum-c, say: Spray both sides.}
- {id: tray-6, do: empty, at: di, waste: drum-c, say: Empty the tray.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """The trays at the end of every path."""
    for end in study.walk.ends:
        for id in sorted(end.state.names("tray")):
            since = end.state.atom("tray", id).since
            yield found_at_end(
                DOC,
                study,
                end,
                since,
                f"the tray of {called(study, id)} is full at the end",
                f"put a `do: empty` step at {id} behind {since}",
                end.state.cause("tray", id),
            )


RULE = Rule(DOC, in_procedure=find)
