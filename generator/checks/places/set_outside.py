"""A temperature that is set lies outside what the place takes."""

from collections.abc import Iterator
from functools import lru_cache

from generator.checks.evidence.moments import called
from generator.checks.rule import Rule
from generator.model import Step
from generator.problems import Level, Problem, RuleDoc
from generator.study import Study
from generator.units import Quantity, UnitsError, read_quantity, show_quantity, show_window

DOC = RuleDoc(
    id="set-outside",
    level=Level.ERROR,
    subject="places",
    what="A temperature in `set` lies outside the `temperature` of the place.",
    why="The card would tell a student to set what the place forbids.",
    bad="""- {id: fix, do: put-in, at: oven, set: {temperature: 95 degC}, for: 22 min,
   say: Rack on the middle shelf.}   # 70 to 80 degC""",
    good="""- {id: fix, do: put-in, at: oven, set: {temperature: 75 degC}, for: 22 min,
   say: Rack on the middle shelf.}""",
    needs=("places",),
)


def find(study: Study) -> Iterator[Problem]:
    """Every temperature of every step's settings, profiles included."""
    for located in study.steps():
        step, place = located.step, study.place(located.step.at)
        if place is None or place.temperature is None:
            continue
        for asked in _temperatures(step):
            if asked.dimension == place.temperature.dimension and not place.temperature.contains(asked):
                yield DOC.found(
                    step.spot("set"),
                    f"{show_quantity(asked)} is set at {called(study, str(step.at))}, which takes "
                    f"{show_window(place.temperature)}",
                    "set a temperature inside the window, or correct the place",
                    step=str(step.id),
                )


def _temperatures(step: Step) -> Iterator[Quantity]:
    for value in step.set.values():
        if isinstance(value, tuple):
            yield from (leg.to for leg in value)
            continue
        found = _quantity(str(value))
        if found is not None:
            yield found


@lru_cache(maxsize=1024)
def _quantity(text: str) -> Quantity | None:
    try:
        return read_quantity(text)
    except UnitsError:
        return None


RULE = Rule(DOC, in_procedure=find)
