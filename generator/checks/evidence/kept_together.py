"""What the lab keeps: ingredients of a mixture, kinds of waste in a container, bottles in a cupboard."""

from collections.abc import Iterator
from itertools import combinations

from generator.checks.evidence.meeting import Amounts, Meeting, meetings_among
from generator.model import Lab, Mixture, Portion
from generator.units import Quantity


def in_mixture(lab: Lab, made: Mixture) -> Iterator[Meeting]:
    """Ingredients that never meet; of the chart what is severe, since heat and solution are the making."""
    for found in meetings_among(lab, map(str, made.made_of), amounts_in(made)):
        if found.severe:
            yield found


def in_container(lab: Lab, takes: tuple[str, ...]) -> Iterator[Meeting]:
    """Kinds of waste of one container that never meet; waste gathers, so no amount is small here."""
    yield from meetings_among(lab, takes)


def in_cupboards(lab: Lab) -> Iterator[tuple[str, str, Meeting]]:
    """Pairs of bottles that share a cupboard, with the later one's id and the cupboard's words."""
    kept: dict[str, list[str]] = {}
    words: dict[str, str] = {}
    for id, bought in lab.substances.items():
        if bought.kept and bought.kept.cupboard:
            place = " ".join(bought.kept.cupboard.lower().split())
            words.setdefault(place, str(bought.kept.cupboard))
            kept.setdefault(place, []).append(str(id))
    for place, ids in kept.items():
        for first, then in combinations(ids, 2):
            found = next(meetings_among(lab, (first, then)), None)
            if found:
                yield then, words[place], found


def amounts_in(made: Mixture) -> Amounts:
    """How much of each ingredient stands in a mixture of known volume."""
    return {
        str(name): amount
        for name, portion in made.made_of.items()
        if made.volume and (amount := _amount(made, portion)) is not None
    }


def _amount(made: Mixture, portion: Portion) -> Quantity | None:
    share, volume = portion.amount, made.volume
    if share is None or volume is None:
        return None
    kind = share.dimension.name
    if kind == "mass per volume":
        return Quantity(share.si * volume.si, "kg")
    if share.unit in ("% v/v", "mL/L"):
        return Quantity(share.si * volume.si, "m3")
    if share.unit == "% w/w" and made.density is not None:
        return Quantity(share.si * volume.si * made.density.si, "kg")
    return None
