"""Two places have one station number."""

from collections.abc import Iterator
from itertools import count

from generator.checks.rule import Rule
from generator.model import Text
from generator.problems import Level, Problem, RuleDoc
from generator.study import LabStudy

DOC = RuleDoc(
    id="number-twice",
    level=Level.ERROR,
    subject="places",
    what="Two places of the lab carry the same station number.",
    why="Cards and pages send people to a number. Where it hangs twice, some go to the wrong bath.",
    bad="""places:
  etch: {number: 4, title: Micro-etch}
  oven: {number: 4, title: Oven}""",
    good="""places:
  etch: {number: 3, title: Micro-etch}
  oven: {number: 4, title: Oven}""",
    needs=("places",),
)


def find(study: LabStudy) -> Iterator[Problem]:
    """One problem a place whose number an earlier one has."""
    first: dict[int, Text] = {}
    places = study.lab.places
    taken = {place.number for place in places.values()}
    for id, place in places.items():
        if place.number is None:
            continue
        other = first.setdefault(place.number, id)
        if other != id:
            free = next(number for number in count(1) if number not in taken)
            yield DOC.found(
                place.spot("number"),
                f"{place.title} has station number {place.number}, and so has {places[other].title}",
                f"give one of them a number of its own, such as {free}, and hang it there",
                place=str(id),
            )


RULE = Rule(DOC, in_lab=find)
