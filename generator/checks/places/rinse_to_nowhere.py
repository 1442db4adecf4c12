"""A rinse over a tray names no container."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="rinse-to-nowhere",
    level=Level.ERROR,
    subject="places",
    what="A rinse over a tray names no `waste`.",
    why="What runs into the tray must end somewhere, and the card prints where.",
    bad="""- {id: rinse-1, do: rinse, at: di, for: 90 s, say: Spray both sides.}""",
    good="""- {id: rinse-1, do: rinse, at: di, for: 90 s, waste: jug-a, say: Spray both sides.}""",
    needs=(
        "places",
        "waste",
    ),
)


def find(study: Study) -> Iterator[Problem]:
    """Every rinse, mends included, at a place with a tray."""
    for located in study.steps():
        step, place = located.step, study.place(located.step.at)
        if step.do == "rinse" and place is not None and place.tray and step.waste is None:
            yield DOC.found(
                step.spot("id"),
                f"what runs into the tray of {called(study, str(step.at))} goes nowhere",
                f"write `waste: ...` with one of: {', '.join(study.lab.waste)}",
                step=str(step.id),
            )


RULE = Rule(DOC, in_procedure=find)
