"""The run ends with more on than everybody wears."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, causes_of, found_at_end
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import worn_as

DOC = RuleDoc(
    id="still-wearing",
    level=Level.WARNING,
    subject="person",
    what="The run ends with more on than `base_wear`. A pause takes everything off by itself.",
    why="Used gloves on door handles carry the bath out of the room.",
    bad="""- {id: unwear, do: wear, take_off: [apron], say: Apron off.}   # and the gloves stay on""",
    good="""- {id: unwear, do: wear, take_off: [apron, nitrile], wash_hands: true, waste: bag-s,
   say: Apron and gloves off. Wash your hands.}""",
    needs=("ppe",),
)


def find(study: Study) -> Iterator[Problem]:
    """What is worn at the end of every path."""
    for end in study.walk.ends:
        left = sorted(set(end.state.names("worn")) - {*worn_as(study.lab, study.lab.lab.base_wear)})
        if left:
            since = end.state.atom("worn", left[0]).since
            yield found_at_end(
                DOC,
                study,
                end,
                since,
                f"the run ends with {called(study, *left)} still on",
                f"put `take_off: [{', '.join(left)}]` on a last `do: wear` step",
                *causes_of(end.state, "worn", left),
            )


RULE = Rule(DOC, in_procedure=find)
