"""A bath is topped up with something that does not evaporate."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="level-topped-up",
    level=Level.ERROR,
    subject="places",
    what=(
        "A step tops a bath up with anything but what evaporates from it (deionised water), or adds "
        "what is not in its recipe."
    ),
    why="Water evaporates; acid and salts stay. Topping up with bath makes it stronger every week.",
    bad="""- {id: top-up, do: add, at: copper, use: {copper-mix: 2 L}, say: Fill up to the line.}""",
    good="""- {id: top-up, do: add, at: copper, use: {deionised-water: 2 L}, say: Fill up to the line.}""",
    needs=(
        "mixtures",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every add and pour at a place that holds a mixture."""
    # A bath that the run itself has made is filled in, not topped up.
    made = {str(located.step.into) for located in study.steps() if located.step.into}
    for located in study.steps():
        step, mixture = located.step, study.mixture_at(located.step.at)
        if step.do not in ("add", "pour") or mixture is None:
            continue
        doses = {str(id) for id, portion in mixture.made_of.items() if not portion.rest}
        for name in step.use:
            if not _is_water(study, str(name)) and name not in doses and name not in made:
                yield DOC.found(
                    step.spot("use"),
                    f"{called(study, str(name))} is added to {called(study, str(step.at))}; only "
                    "water evaporates "
                    "from it",
                    "top up with deionised water; correct the strength by what an analysis asks for",
                    step=str(step.id),
                )


def _is_water(study: Study, name: str) -> bool:
    """CAS 7732-18-5 is water, in whatever purity the lab buys it."""
    substance = study.lab.substances.get(name)  # type: ignore[call-overload]
    return bool(substance and substance.cas == "7732-18-5")


RULE = Rule(DOC, in_procedure=find)
