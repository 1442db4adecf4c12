"""What never meets, and what among some things meets all the same."""

from collections.abc import Iterable
from dataclasses import dataclass
from itertools import combinations

from generator.checks.chemicals.contents import Brought, brought_by
from generator.model import Lab


@dataclass(frozen=True, slots=True)
class Meeting:
    """Two things of different groups that one row keeps apart."""

    one: Brought
    other: Brought
    because: str


def meeting(lab: Lab, names: Iterable[str]) -> Meeting | None:
    """The first two groups among some things that a row keeps apart; one substance never meets itself."""
    brought = [one for name in dict.fromkeys(names) for one in brought_by(lab, name)]
    for row in lab.keep_apart:
        for one, other in combinations([b for b in brought if b.group in row.groups], 2):
            if one.group != other.group and one.substance != other.substance:
                return Meeting(one, other, str(row.because))
    return None
