"""A rinse is shorter than the place asks for."""

from collections.abc import Iterator

from generator.checks.evidence.moments import called
from generator.checks.rule import Rule
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import show_quantity, show_window

DOC = RuleDoc(
    id="rinse-too-short",
    level=Level.ERROR,
    subject="part",
    what="`for` of a rinse is under the shortest time of its place.",
    why="A short rinse leaves what it was to take off.",
    bad="""- {id: rinse-1, do: rinse, at: di, for: 30 s, waste: jug-a, say: Spray both sides.}""",
    good="""- {id: rinse-1, do: rinse, at: di, for: 90 s, waste: jug-a, say: Spray both sides.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every rinse, mends included, against the place's shortest time."""
    for located in study.steps():
        step, place = located.step, study.place(located.step.at)
        if step.do != "rinse" or place is None or place.time is None or place.time.low is None:
            continue
        time = study.sums.time_of(step)
        if time is None or time.si < place.time.low.si:
            given = f"rinses for {show_quantity(time)}" if time else "does not say how long to rinse"
            yield DOC.found(
                step.spot("for"),
                f"the step {given}, but {called(study, str(step.at))} asks for {show_window(place.time)}",
                f"write `for: {place.time.low.number:g} {place.time.low.unit}` or longer",
                step=str(step.id),
            )


RULE = Rule(DOC, in_procedure=find)
