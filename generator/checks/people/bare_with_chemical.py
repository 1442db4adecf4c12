"""What is worn does not protect against what a step uses."""

from collections.abc import Iterator

from generator.checks.evidence.moments import causes_of, found_at, moments
from generator.checks.evidence.protecting import CHEMICALS, asked, bare, known, listed, pieces_for
from generator.checks.rule import Rule
from generator.model import Text
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study, title_of
from generator.walk import START, Moment

DOC = RuleDoc(
    id="bare-with-chemical",
    level=Level.ERROR,
    subject="people",
    what="What is on when a step uses a substance or mixture does not protect all that its H statements "
    "ask for, or a piece that the mixture wants worn is not on.",
    why="A place cannot ask for gloves against what is brought to it. The bottle does.",
    bad="""- {id: weigh-b, do: weigh, at: balance, use: {hardener-b: 58 g}, say: Weigh part B.}""",
    good="""- {id: gloves-on, do: wear, put_on: [nitrile, visor], say: Put on gloves and shield.}
- {id: weigh-b, do: weigh, at: balance, use: {hardener-b: 58 g}, say: Weigh part B.}""",
    needs=("ppe",),
    source="UN GHS Rev. 10 Annex 3, condition notes to P280; the rest common practice, no source",
)


def find(study: Study) -> Iterator[Problem]:
    """One problem a step that uses something; steps that lack the same pieces follow from the first."""
    for moment in moments(study):
        worn = tuple(moment.before.names("worn")) if moment.step.use else ()
        for id in map(str, moment.step.use):
            problem = _judge(study, moment, id, worn)
            if problem is not None:
                yield problem
                break


def _judge(study: Study, moment: Moment, id: str, worn: tuple[str, ...]) -> Problem | None:
    lab = study.lab
    made = lab.mixtures.get(Text(id))
    wanted = tuple(map(str, made.wear)) if made else ()
    asks = asked(study.statements_of(id))
    light = bare(lab, worn, (one.part for one in asks), CHEMICALS)
    pieces = (*(piece for piece in wanted if piece not in worn), *pieces_for(lab, light, CHEMICALS, wanted))
    missing = tuple(dict.fromkeys(pieces))
    if not (light or missing) or not known(lab, (*wanted, *worn)):
        return None
    return found_at(
        DOC,
        moment,
        f"{_what(study, id)} is used, and nothing that is worn protects {listed(light)} against it"
        if light
        else f"{_what(study, id)} wants {listed(title_of(lab, piece) for piece in missing)} worn",
        _fix(moment, light, missing),
        *causes_of(moment.before, "worn", sorted(missing)),
        label=_since(moment, missing),
    )


def _what(study: Study, id: str) -> str:
    codes = [code for one in asked(study.statements_of(id)) for code in one.because]
    told = f" ({', '.join(dict.fromkeys(codes))})" if codes else ""
    return f"{title_of(study.lab, id)}{told}"


def _fix(moment: Moment, light: tuple[str, ...], missing: tuple[str, ...]) -> str:
    if not missing:
        return (
            f"declare under `ppe` a piece that protects {listed(light)} `against: [chemicals]`, and wear it"
        )
    return f"put `put_on: [{', '.join(missing)}]` on a `do: wear` step before {moment.step.id}"


def _since(moment: Moment, missing: tuple[str, ...]) -> str:
    off = [since for piece in missing if (since := moment.before.atom("worn", piece).since) != START]
    return f"last taken off at step {off[0]}" if off else "never put on before here"


RULE = Rule(DOC, in_procedure=find)
