"""Used gloves touch what bare hands touch in the same run."""

from collections.abc import Iterator

from generator.checks.evidence.moments import at_places, called, causes_of, found_at
from generator.checks.rule import Rule
from generator.problems import Cause, Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import Moment

DOC = RuleDoc(
    id="gloves-on-clean-thing",
    level=Level.WARNING,
    subject="person",
    what="Gloves that touched a mixture touch a place that bare hands use in the same run.",
    why="What the gloves leave on a lamp or a handle is on the next bare hand.",
    bad="""- {id: cond-out, do: take-out, at: cond, say: Lift slowly.}
- {id: see-dry, do: check, at: light, say: Look through the holes.,
   check: no water film}   # with the same gloves""",
    good="""- {id: fresh-gloves, do: wear, take_off: [nitrile], put_on: [nitrile], fresh: true,
   waste: bag-s, say: Put on a fresh pair.}
- {id: see-dry, do: check, at: light, say: Look through the holes., check: no water film}""",
    needs=(
        "ppe",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Each touching on the straight run by a glove that has been at a mixture."""
    bare: dict[str, list[Moment]] = {}
    for moment, id, _ in at_places(study, straight=True):
        if not moment.before.gloves():
            bare.setdefault(id, []).append(moment)
    for moment, id, place in at_places(study, straight=True):
        gloves = moment.before.gloves()
        if not gloves or place.holds or id not in bare or moment.step.do in ("wear", "wait", "hold"):
            continue
        wetted = sorted(name for name in moment.before.touched(gloves[-1]) if study.mixture_at(name))
        if wetted:
            yield found_at(
                DOC,
                moment,
                f"the {called(study, gloves[-1])} touched {called(study, *wetted)} and now "
                f"{called(study, id)}, "
                "which bare hands touch in the same run",
                "change the gloves before this step, or work at another place",
                moment.before.cause("glove", gloves[-1]),
                *causes_of(bare[id][-1].before, "worn", on_hands(study)),
                *_only(bare[id]),
            )


def _only(bare: list[Moment]) -> tuple[Cause, ...]:
    """A single step that is done with bare hands may be the one that stands at the wrong place of the run."""
    steps = {str(moment.step.id) for moment in bare}
    return (Cause(f"bare:{bare[0].step.at}", steps.pop()),) if len(steps) == 1 else ()


def on_hands(study: Study) -> list[str]:
    """All pieces that are worn on the hands: hands are bare for want of any of them."""
    return [str(id) for id, piece in study.lab.ppe.items() if piece.protects == "hands"]


RULE = Rule(DOC, in_procedure=find)
