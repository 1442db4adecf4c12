"""Gloves come off and nobody washes their hands."""

from collections.abc import Iterator

from generator.checks.evidence.gloves import chemical_gloves
from generator.checks.evidence.moments import called, found_at, moments
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="hands-unwashed",
    level=Level.WARNING,
    subject="person",
    what="The last gloves against chemicals come off in a step without `wash_hands`.",
    why="Taking gloves off is when hands get dirty.",
    bad="""- {id: unwear, do: wear, take_off: [nitrile], waste: bag-s, say: Gloves off.}""",
    good="""- {id: unwear, do: wear, take_off: [nitrile], wash_hands: true, waste: bag-s,
   say: Gloves off. Wash your hands.}""",
    needs=("ppe",),
)


def find(study: Study) -> Iterator[Problem]:
    """Each taking-off on the straight run behind which no chemical glove is left."""
    for moment in moments(study, straight=True):
        if moment.before.gloves() == moment.after.gloves() or moment.step.wash_hands:
            continue
        before, after = chemical_gloves(study, moment.before), chemical_gloves(study, moment.after)
        if before and not after:
            yield found_at(
                DOC,
                moment,
                f"the last gloves against chemicals ({called(study, *before)}) come off "
                "and the hands are not washed",
                "write `wash_hands: true` here, and say it in the sentence",
            )


RULE = Rule(DOC, in_procedure=find)
