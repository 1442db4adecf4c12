"""Used gloves reach a place that wants fresh ones."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, found_at, since_when
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="dirty-gloves",
    level=Level.ERROR,
    subject="person",
    what="Gloves that touched something else reach a place with `fresh_gloves`.",
    why="What is on the gloves goes into the bath.",
    bad="""- {id: dry-2, do: dry, at: blower, takes: 5 min,
   say: Dry both faces.}   # with the gloves of the cleaner
- {id: open-3, do: open, at: black, say: Lid off.}""",
    good="""- {id: fresh-gloves, do: wear, take_off: [nitrile], put_on: [nitrile], fresh: true,
   waste: bag-s, say: Bin the gloves. Put on a fresh pair.}
- {id: open-3, do: open, at: black, say: Lid off.}""",
    needs=(
        "ppe",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every touching of such a place, on every path: what the outermost glove touched since it was put on."""
    for moment, id, place in at_places(study):
        gloves = moment.before.gloves()
        if not place.fresh_gloves or not gloves or moment.step.do in ("wear", "wait", "hold"):
            continue
        other = sorted(moment.before.touched(gloves[-1]) - {id})
        if other:
            since = moment.before.atom("glove", gloves[-1]).since
            yield found_at(
                DOC,
                moment,
                f"the {called(study, gloves[-1])} touched {called(study, *other)} before "
                f"{called(study, id)}, "
                "which wants fresh ones",
                f"put a `do: wear` step with `fresh: true` directly before the first step at {id}",
                moment.before.cause("glove", gloves[-1]),
                label=f"put on {since_when(study, since)}",
            )


RULE = Rule(DOC, in_procedure=find)
