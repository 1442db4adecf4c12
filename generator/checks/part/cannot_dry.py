"""A part is dried at a place that does not dry."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called
from generator.checks.rule import Rule
from generator.problems import Cause, Level, Problem, RuleDoc
from generator.study import Study

DOC = RuleDoc(
    id="cannot-dry",
    level=Level.ERROR,
    subject="part",
    what="`dry` at a place that does not say `makes: dry`.",
    why="The checker would believe the part dry, and the student would find it wet.",
    bad="""- {id: dry-2, do: dry, at: bench, takes: 5 min, say: Dry both faces.}""",
    good="""- {id: dry-2, do: dry, at: blower, takes: 5 min, say: Dry both faces.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every dry step, mends included, at a place that dries nothing."""
    for located in study.steps():
        step, place = located.step, study.place(located.step.at)
        if step.do == "dry" and place is not None and place.makes != "dry":
            drying = [id for id, other in study.lab.places.items() if other.makes == "dry"]
            yield DOC.found(
                step.spot("at"),
                f"{called(study, str(step.at))} does not dry anything: it does not say `makes: dry`",
                f"dry at {called(study, *drying)}"
                if drying
                else "write `makes: dry` at the place that dries",
                step=str(step.id),
                causes=(Cause("dries", str(step.at)),),
            )


RULE = Rule(DOC, in_procedure=find)
