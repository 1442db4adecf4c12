"""What comes does not belong in the container named."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called, either, found_at, moments
from generator.checks.evidence.outflow import LETTING_GO, causes_for, coming, container_of
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="wrong-container",
    level=Level.ERROR,
    subject="places",
    what="The container named does not take what comes: residue, mixture, leftover, gloves or vacuumed dust.",
    why="A wrong drum is dangerous to whoever opens it, and no one may fetch it.",
    bad="""- {id: rinse-5, do: rinse, at: di, for: 100 s, waste: jug-a,
   say: Spray both sides.}   # etch liquor belongs in drum-p""",
    good="""- {id: rinse-5, do: rinse, at: di, for: 100 s, waste: drum-p, say: Spray both sides.}""",
    needs=(
        "waste",
        "places",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every rinse, cleaning, emptying and glove change, on every path, against what its container takes."""
    for moment in moments(study, *LETTING_GO):
        id = container_of(study, moment) or ""
        container = study.container(id)
        if container is None:
            continue
        # What no container takes at all is named by `waste-unhoused`.
        refused = sorted(coming(study, moment).difference(container.takes))
        if refused and _is_housed(study, refused):
            fitting = [name for name, other in study.lab.waste.items() if set(refused) <= set(other.takes)]
            yield found_at(
                DOC,
                moment,
                f"{called(study, *refused)} would go into {called(study, id)}, which does not take it",
                f"use {either(study, [*map(str, fitting)])}"
                if fitting
                else f"declare a container that takes {', '.join(refused)}",
                *(cause for name in refused for cause in causes_for(moment, name)),
            )


def _is_housed(study: Study, refused: list[str]) -> bool:
    return any(kind in refused for other in study.lab.waste.values() for kind in other.takes)


RULE = Rule(DOC, in_procedure=find)
