"""The places of the lab that take hostile words: all but those whose own line says that they refuse them."""

from functools import cache

from tests.hostile.doors import DAY
from tests.hostile.spoilt import TEXTS, Spot, all_spots, errors, lines, spoil_all, trees

_TURNS = 40
# What a container does not take is told where it comes from; other words in these fields break other lines.
_ELSEWHERE = {"takes"}


def text_for(spot: Spot) -> str:
    """A hostile text for a place, the same each time, all of them by turns."""
    return TEXTS[all_spots().index(spot) % len(TEXTS)]


def _at(on_line: dict[tuple[str, int], list[Spot]], line: tuple[str, int], places: set[Spot]) -> set[Spot]:
    """The places on a line, or on the one above: a name may be judged where its fields begin."""
    file, number = line
    here, above = (places.intersection(on_line.get((file, at), ())) for at in (number, number - 1))
    return here or above


@cache
def taken() -> tuple[Spot, ...]:
    """Begin with all places; take out those on whose line an error stands, until there is none."""
    places = {spot for spot in all_spots() if not set(spot) & _ELSEWHERE}
    for _ in range(_TURNS):
        files = spoil_all(places, lambda spot, old: f"{old} {text_for(spot)}")
        found = errors(files, DAY)
        if not found:
            return tuple(spot for spot in all_spots() if spot in places)
        on_line = lines(trees())
        told = {(problem.where.file, problem.where.line) for problem in found}
        refused = {spot for line in told for spot in _at(on_line, line, places)}
        assert refused, [(str(problem.where), problem.message) for problem in found]
        assert all(problem.message and problem.fix for problem in found)
        places -= refused
    raise AssertionError("the lab never becomes good")
