"""A hot part is handled before it has cooled."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, moments, part
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="hot-handling",
    level=Level.WARNING,
    subject="part",
    what="A part from a hot place is checked, mounted or weighed and nothing cooled it.",
    why="Hot metal looks like cold metal.",
    bad="""- {id: fix-out, do: take-out, at: oven, say: Take the rack out.}
- {id: see-black, do: check, at: light, say: Look at every hole., check: even black wall}""",
    good="""- {id: fix-out, do: take-out, at: oven, say: Take the rack out.}
- {id: cool-4, do: cool, at: stand, for: 3 min, say: Leave the rack on the stand.}
- {id: see-black, do: check, at: light, say: Look at every hole., check: even black wall}""",
    needs=(
        "part",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Each check, mount or weighing on the straight run of a part that is still hot."""
    for moment in moments(study, "check", "mount", "weigh", straight=True):
        hot = moment.before.text("hot")
        if hot and not moment.before.has("in"):
            yield found_at(
                DOC,
                moment,
                f"the {part(study)} comes hot from {called(study, hot)} and nothing has cooled it",
                f"put a `do: cool` step with a time before {moment.step.id}",
                moment.before.cause("hot"),
            )


RULE = Rule(DOC, in_procedure=find)
