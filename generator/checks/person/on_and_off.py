"""A piece is put on and taken off with nothing done between."""

from collections.abc import Iterator
from itertools import pairwise

from generator.checks.evidence.moments import called, found_at
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="on-and-off",
    level=Level.NOTE,
    subject="person",
    what="A piece comes on and off (or off and on) with nothing between.",
    why="It costs time, and people stop doing it.",
    bad="""- {id: gloves-on, do: wear, put_on: [nitrile], say: Gloves on.}
- {id: gloves-off, do: wear, take_off: [nitrile], wash_hands: true, waste: bag-s, say: Gloves off.}""",
    good="""- {id: gloves-on, do: wear, put_on: [nitrile], say: Gloves on.}
- {id: soak-in, do: put-in, at: soak, for: 8 min, say: Lower the board in.}
- {id: gloves-off, do: wear, take_off: [nitrile], wash_hands: true, waste: bag-s, say: Gloves off.}""",
    needs=("ppe",),
)


def find(study: Study) -> Iterator[Problem]:
    """Pairs of neighbouring wear steps on the straight run."""
    run = study.walk.straight
    for first, second in pairwise(run):
        if first.step.do != "wear" or second.step.do != "wear" or first.step.pause is not None:
            continue
        twice = sorted(
            {str(piece) for piece in first.step.put_on} & {str(piece) for piece in second.step.take_off}
        )
        if twice and not second.step.fresh:
            yield found_at(
                DOC,
                second,
                f"{called(study, *twice)} come off again with nothing done since step {first.step.id}",
                "leave both out, or put the work between them",
            )


RULE = Rule(DOC, in_procedure=find)
