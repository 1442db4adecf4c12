"""A card that needs smaller letters is split: by its stages, or by runs of steps, as evenly as can be."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from generator.outputs.press.fitting import setting
from generator.outputs.press.steps import stays
from generator.outputs.press.texts import texts_of_step
from generator.views.card import CardStep, CardView

_MOST_PARTS = 8


@dataclass(frozen=True, slots=True)
class CardPart:
    """One card of a split: ids and numbers of its steps, titles of its stages, letters in mm."""

    steps: tuple[str, ...]
    first: str
    last: str
    stages: tuple[str, ...]
    letter_height: float


def proposal(card: CardView) -> tuple[CardPart, ...]:
    """The fewest parts that all fit, cut between stages if that does, else between places, else anywhere.

    Empty when not even one step a card fits: then only a larger sheet or a shorter reading distance helps.
    """
    by_place = [stay.steps for stay in stays(card.steps)]
    cuts = (_groups_by_stage(card.steps), by_place, [(step,) for step in card.steps])
    for count in range(2, _MOST_PARTS + 1):
        for groups in cuts:
            parts = _fitting(card, groups, count)
            if parts:
                return parts
    return ()


def part_of(card: CardView, steps: Sequence[str], number: int, count: int) -> CardView:
    """The card with only these steps, its tables that belong to them, and "1/2" after its title and id."""
    kept = tuple(step for step in card.steps if step.id in steps)
    tables = tuple(table for table in card.tables if not table.step or table.step in steps)
    title = f"{card.title} {number}/{count}"
    return replace(card, card=f"{card.card}-{number}", title=title, steps=kept, tables=tables)


def _groups_by_stage(steps: Sequence[CardStep]) -> list[tuple[CardStep, ...]]:
    order = dict.fromkeys(step.stage for step in steps)
    return [tuple(step for step in steps if step.stage == stage) for stage in order]


def _fitting(card: CardView, groups: Sequence[tuple[CardStep, ...]], count: int) -> tuple[CardPart, ...]:
    if len(groups) < count:
        return ()
    parts = []
    for number, steps in enumerate(_even(groups, count), start=1):
        ids = tuple(step.id for step in steps)
        found = setting(part_of(card, ids, number, count))
        if not found.fits:
            return ()
        titles = tuple(dict.fromkeys(step.stage_title for step in steps if step.stage_title))
        parts.append(CardPart(ids, steps[0].number, steps[-1].number, titles, found.plan.letters.text))
    return tuple(parts)


def _weight(step: CardStep) -> int:
    """About how much room a step takes: its letters, a line of its own, its large time."""
    return sum(map(len, texts_of_step(step))) + 20 + (40 if step.dwell_shown or step.amount_shown else 0)


def _even(groups: Sequence[tuple[CardStep, ...]], count: int) -> list[tuple[CardStep, ...]]:
    """Neighbouring groups joined into `count` parts whose heaviest is as light as can be."""
    weights = [sum(map(_weight, group)) for group in groups]
    low, high = max(weights), sum(weights)
    while low < high:
        middle = (low + high) // 2
        low, high = (low, middle) if len(_cuts(weights, middle, count)) <= count + 1 else (middle + 1, high)
    cuts = _cuts(weights, low, count)
    return [tuple(step for group in groups[a:b] for step in group) for a, b in pairwise(cuts)]


def _cuts(weights: Sequence[int], most: int, count: int) -> list[int]:
    """Where to cut so that no part weighs more than `most`; at least as many parts as asked for."""
    cuts, load = [0], 0
    for place, weight in enumerate(weights):
        left = len(weights) - place
        if place > cuts[-1] and (load + weight > most or left <= count - len(cuts)):
            cuts.append(place)
            load = 0
        load += weight
    return [*cuts, len(weights)]
