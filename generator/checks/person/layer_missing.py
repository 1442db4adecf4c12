"""A piece is worn without the one that must be underneath."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, found_at, is_or_are, moments
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.walk import Moment, worn_as

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
        changed = {*worn_as(study.lab, (*moment.step.take_off, *moment.step.put_on))}
        for piece in sorted(moment.after.names("worn")):
            over = study.lab.ppe[piece].over if piece in study.lab.ppe else None  # type: ignore[index]
            if over is None:
                continue
            under = worn_as(study.lab, (over,))[0]
            if not moment.after.has("worn", under):
                yield _without(study, moment, piece, under)
            elif under in changed and piece not in changed and moment.before.has("worn", piece):
                yield _from_under(study, moment, piece, under)


def _without(study: Study, moment: Moment, piece: str, under: str) -> Problem:
    return found_at(
        DOC,
        moment,
        f"{called(study, piece)} {is_or_are(study, [piece])} worn without {called(study, under)} underneath",
        f"put `{under}` on first, or take `{piece}` off with it",
        moment.after.cause("worn", under),
    )


def _from_under(study: Study, moment: Moment, piece: str, under: str) -> Problem:
    return found_at(
        DOC,
        moment,
        f"{called(study, under)} cannot be changed while {called(study, piece)} is worn over it",
        f"take `{piece}` off first, or change both",
        moment.after.cause("worn", under),
    )


RULE = Rule(DOC, in_procedure=find)
