"""Finds the largest letters with which a card fits its sheet, or says by how much it does not."""

from dataclasses import dataclass
from functools import lru_cache
from math import floor, sqrt

from generator.outputs.press.composing import Plan, Way, plan
from generator.outputs.press.steps import DENSITIES, Density
from generator.outputs.press.paper import Paper, least_letter, paper
from generator.views.card import CardView

_NOTCH = 0.05
_LARGEST = 3.0
# Columns narrower than this many cap heights hold too few words in a line (about 36 letters).
_NARROWEST = 27.0
_COLUMNS = {"portrait": (1, 2), "landscape": (1, 2, 3)}


@dataclass(frozen=True, slots=True)
class Setting:
    """The way that was chosen: plan, and whether it fits with letters no smaller than the least."""

    plan: Plan
    fits: bool


@lru_cache(maxsize=4_000)
def setting(card: CardView) -> Setting:
    """Sheet, columns and letters for a card: the loosest density that fits, then the largest letters."""
    found = [_best(card, DENSITIES[0])]
    for density in DENSITIES[1:] if card.steps else ():
        if found[-1].fits and found[-1].plan.whole:
            break
        found.append(_best(card, density))
    return max(found, key=lambda way: (way.fits, way.fits and way.plan.whole))


def _best(card: CardView, density: Density) -> Setting:
    least = least_letter(card.read_from)
    starts = sorted((plan(card, way, least) for way in _ways(card, density, least)), key=_fill)
    best: Plan | None = None
    for start in starts:
        best = _better(card, start, best)
    return Setting(starts[0], False) if best is None else Setting(best, True)


def _ways(card: CardView, density: Density, least: float) -> list[Way]:
    lies = ("portrait", "landscape") if card.orientation == "either" else (card.orientation,)
    sheets = [paper(card.size, lie) for lie in lies]
    if not card.steps:
        return [Way(sheet, 1, False, density) for sheet in sheets]
    ways = [Way(sheet, count, False, density) for sheet in sheets for count in _COLUMNS[_lie(sheet)]]
    ways += [Way(sheet, count, True, density) for sheet in sheets for count in _COLUMNS[_lie(sheet)][:-1]]
    return [way for way in ways if way.count == 1 or _column(way) >= _NARROWEST * least]


def _column(way: Way) -> float:
    """About the width of a column of steps in mm."""
    return way.paper.inner_width * (0.65 if way.rail else 1.0) / way.count


def _lie(sheet: Paper) -> str:
    return "landscape" if sheet.width > sheet.height else "portrait"


def _fill(made: Plan) -> tuple[bool, float]:
    return (not made.whole, made.needed / made.room if made.room else float("inf"))


def _better(card: CardView, start: Plan, best: Plan | None) -> Plan | None:
    """The larger of `best` and what this sheet and number of columns can reach; whole words go first."""
    least = start.letters.text
    if best is None:
        return _grown(card, start, least) if start.fits else None
    if not start.whole or best.letters.text + _NOTCH > _LARGEST * least:
        return best
    low = start if not best.whole else _at(card, start, best.letters.text + _NOTCH)
    return _grown(card, low, least) if low.fits and low.whole else best


def _at(card: CardView, made: Plan, cap: float) -> Plan:
    return plan(card, Way(made.paper, made.count, made.rail > 0, made.density), cap)


def _grown(card: CardView, low: Plan, least: float) -> Plan:
    """The largest letters of this way, from one that fits: estimate by area, then close in on a notch."""
    base = low.letters.text
    good, bad = 0, floor((_LARGEST * least - base) / _NOTCH) + 1
    spare = low.room / low.needed if low.needed else 2.0
    step = max(1, floor(base * (sqrt(max(1.0, spare)) - 1) / _NOTCH))
    best, reach = low, 1
    while bad - good > 1:
        step = min(max(step, good + 1), bad - 1)
        tried = _at(card, low, base + step * _NOTCH)
        if tried.fits and (tried.whole or not low.whole):
            good, best, step = step, tried, step + reach
        else:
            bad, step = step, step - reach
        reach *= 2
        if not good < step < bad:
            step = (good + bad) // 2
    return best
