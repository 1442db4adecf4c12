"""Something hot runs while nobody is there."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="hot-unattended",
    level=Level.WARNING,
    subject="places",
    what="`stay: away` at a place with the hazard word hot-surface.",
    why="An oven without a cut-out needs a person.",
    bad="""- {id: cure, do: put-in, at: oven, for: 90 min, stay: away, say: Put the mould on the shelf.}""",
    good="""- {id: cure, do: put-in, at: oven, for: 90 min, stay: near, say: Put the mould on the shelf.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every step during which nobody is there, at a hot place."""
    for located in study.steps():
        step, place = located.step, study.place(located.step.at)
        if step.stay == "away" and place is not None and "hot-surface" in place.hazards:
            yield DOC.found(
                step.spot("stay"),
                f"{called(study, str(step.at))} is hot and runs while nobody is there",
                "write `stay: near`, or accept it with the role that answers for it",
                step=str(step.id),
            )


RULE = Rule(DOC, in_procedure=find)
