"""Nobody looked before a costly bath."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, part
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="not-inspected-before-costly",
    level=Level.WARNING,
    subject="part",
    what=(
        "After the last rinse or drying nobody looked at the part, and the next mixture has a "
        "`cost_to_replace`."
    ),
    why="One bad part spoils a bath for the whole class.",
    bad="""- {id: dry-2, do: dry, at: blower, takes: 5 min, say: Dry both faces.}
- {id: black-in, do: put-in, at: black, for: 6 min, say: Slide the dry board in.}""",
    good="""- {id: dry-2, do: dry, at: blower, takes: 5 min, say: Dry both faces.}
- {id: see-dry, do: check, at: light, say: Look for water., check: no water film in any hole}
- {id: black-in, do: put-in, at: black, for: 6 min, say: Slide the dry board in.}""",
    needs=(
        "part",
        "mixtures",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Each put-in on the straight run into a mixture that is costly to replace."""
    for moment, id, _ in at_places(study, "put-in", straight=True):
        mixture = study.mixture_at(id)
        seen = moment.before.atom("seen")
        washed = {m.step.do for m in study.walk.straight if m.order < moment.order} & {"rinse", "dry"}
        if mixture and mixture.cost_to_replace and washed and not seen.value:
            yield found_at(
                DOC,
                moment,
                f"nobody looked at the {part(study)} since it was rinsed or dried, and "
                f"{called(study, id)} costs "
                f"{mixture.cost_to_replace} to replace",
                f"put a `do: check` step before {moment.step.id}",
                moment.before.cause("seen"),
            )


RULE = Rule(DOC, in_procedure=find)
