"""A piece is worn without the one that must be underneath."""

from collections.abc import Iterator

from generator.checks.moments import called, found_at, moments
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="layer-missing",
    level=Level.ERROR,
    subject="person",
    what="A piece of PPE is worn without the one that it must go `over`.",
    why="A face shield alone lets a splash in from below; a torn gauntlet needs a glove inside.",
    bad="""- {id: etch-wear, do: wear, put_on: [gauntlets], say: Put on the gauntlets.}""",
    good="""- {id: etch-wear, do: wear, put_on: [nitrile, gauntlets],
   say: Put on thin gloves and gauntlets.}""",
    needs=("ppe",),
)


def find(study: Study) -> Iterator[Problem]:
    """After every step that changes what is worn, each worn piece against what it goes over."""
    for moment in moments(study):
        if not (moment.step.put_on or moment.step.take_off):
            continue
        for piece in sorted(moment.after.names("worn")):
            under = study.lab.ppe[piece].over if piece in study.lab.ppe else None  # type: ignore[index]
            if under is not None and not moment.after.has("worn", str(under)):
                yield found_at(
                    DOC,
                    moment,
                    f"{called(study, piece)} is worn without {called(study, str(under))} underneath",
                    f"put `{under}` on first, or take `{piece}` off with it",
                    moment.after.cause("worn", str(under)),
                )


RULE = Rule(DOC, in_procedure=find)
