"""The composition of a mixture implies a class that nobody declared."""

from collections.abc import Iterator

from generator.checks.evidence.contents import place_of, to_judge
from generator.checks.evidence.screened import dropped, implied, not_screened
from generator.checks.rule import Rule
from generator.model import Mixture
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy, title_of

DOC = RuleDoc(
    id="hazard-screen",
    level=Level.WARNING,
    sometimes=Level.ERROR,
    subject="chemicals",
    what="By the mixture rules the composition (sums of several ingredients, or the pH) implies a class "
    "that the mixture does not declare. What one ingredient alone brings is told by hazard-dropped. Also "
    "told is why a composition cannot be worked out: an error where it cannot be true (more than the whole, "
    "two rests, less than nothing), a warning where a density or a formula is missing.",
    why="Three weak irritants together can be one irritant. Nobody sees that on three bottles.",
    bad="""mixtures:
  rust-bath:
    made_of: {citric-acid: 300 g/L, deionised-water: rest}
    ph: 1 to 2
    hazards: [H319]""",
    good="""mixtures:
  rust-bath:
    made_of: {citric-acid: 300 g/L, deionised-water: rest}
    ph: 1 to 2
    hazards: [H314]""",
    needs=("mixtures",),
    source="UN GHS Rev. 10, mixture rules of chapters 3.1 to 4.1, as held in the data of this tool",
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a mixture, with every class that only the whole implies, or why that cannot be said."""
    wanted = to_judge(study)
    for id in (id for id in study.lab.mixtures if id in wanted):
        made, classes = study.lab.mixtures[id], implied(study, str(id))
        yield from _not_screened(study, str(id), made)
        if classes and not dropped(study, str(id)):
            codes = ", ".join(dict.fromkeys(one.code for one in classes))
            told = " and ".join(f"{one.name} ({one.code})" for one in classes)
            yield DOC.found(
                made.spot("hazards"),
                f"what {title_of(study.lab, id)} is made of implies {told}, which it does not declare",
                f"look at the sum with `newel screen {id}`, then add {codes} to its `hazards`, "
                "or have the safety office say why not",
                place=place_of(study.lab, str(id)),
            )


def _not_screened(study: LabStudy, id: str, made: Mixture) -> Iterator[Problem]:
    for why in not_screened(study, id):
        part = next((name for name in made.made_of if name == why.ingredient), None)
        yield DOC.found(
            part.where if part is not None else made.spot("made_of"),
            f"{title_of(study.lab, id)} cannot be screened: {_lowered(why.message)}",
            _lowered(why.fix),
            place=place_of(study.lab, id),
            level=Level.ERROR if why.nonsense else Level.WARNING,
        )


def _lowered(sentence: str) -> str:
    """A sentence as the rest of one."""
    return (sentence[:1].lower() + sentence[1:]).rstrip(".")


RULE = Rule(DOC, in_lab=find, in_procedure=find)
