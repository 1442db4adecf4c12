"""Finds the largest letters with which a card fits its sheet, or says by how much it does not."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from functools import lru_cache
from math import floor, sqrt

from generator.outputs.press.composing import Plan, Shared, Way, plan
from generator.outputs.press.paper import Paper, least_letter, paper
from generator.outputs.press.steps import DENSITIES
from generator.views.card import CardView

_NOTCH = 0.05
_LARGEST = 3.0
# Columns narrower than this many cap heights hold too few words in a line (about 36 letters).
_NARROWEST = 27.0
_COLUMNS = {"portrait": (1, 2), "landscape": (1, 2, 3)}
# A way this much too full when set loose is not saved by setting it close.
_HOPELESS = 1.4
# How far a guess by area may fall short of what a way reaches.
_DOUBT = 1.12
# After so many guesses the search halves what is left.
_GUESSES = 4


@dataclass(frozen=True, slots=True)
class Setting:
    """The way that was chosen: plan, and whether it fits with letters no smaller than the least."""

    plan: Plan
    fits: bool


@lru_cache(maxsize=4_000)
def setting(card: CardView) -> Setting:
    """Sheet, columns and letters for a card: the loosest density that fits, then the largest letters."""
    return _Search(card, least_letter(card.read_from)).setting()


def _ways(card: CardView, least: float) -> list[Way]:
    lies = ("portrait", "landscape") if card.orientation == "either" else (card.orientation,)
    sheets = [paper(card.size, lie) for lie in lies]
    if not card.steps:
        return [Way(sheet, 1, False, "loose") for sheet in sheets]
    ways = [Way(sheet, count, False, "loose") for sheet in sheets for count in _COLUMNS[_lie(sheet)]]
    ways += [Way(sheet, count, True, "loose") for sheet in sheets for count in _COLUMNS[_lie(sheet)][:-1]]
    return [way for way in ways if way.count == 1 or _column(way) >= _NARROWEST * least]


def _column(way: Way) -> float:
    """About the width of a column of steps in mm."""
    return way.paper.inner_width * (0.65 if way.rail else 1.0) / way.count


def _lie(sheet: Paper) -> str:
    return "landscape" if sheet.width > sheet.height else "portrait"


def _fill(made: Plan) -> float:
    return made.needed / made.room if made.room > 0 else float("inf")


def _crowded(made: Plan) -> float:
    """How full the columns are, or for a card without steps the sheet."""
    return _fill(made) if made.blocks else 1 - made.height / made.paper.inner_height


def _way(made: Plan) -> Way:
    return Way(made.paper, made.count, made.rail > 0, made.density)


@dataclass(frozen=True, slots=True)
class _Search:
    """The search for one card, with what its plans share."""

    card: CardView
    least: float
    shared: Shared = field(default_factory=Shared)

    def setting(self) -> Setting:
        """The loosest density in which a way fits with whole words; failing that, what came nearest."""
        ways = _ways(self.card, self.least)
        found: Plan | None = None
        nearest: list[Plan] = []
        for density in DENSITIES if self.card.steps else DENSITIES[:1]:
            starts = [self._plan(replace(way, density=density), self.least) for way in ways]
            starts.sort(key=lambda made: (not made.whole, _fill(made)))
            best = self._best(starts)
            found = found if best is None else best
            if best is not None and best.whole:
                break
            nearest = starts
            ways = [_way(made) for made in starts if _fill(made) <= _HOPELESS] or ways[:1]
        chosen = found or min(nearest, key=_fill)
        return Setting(chosen, found is not None)

    def _plan(self, way: Way, cap: float) -> Plan:
        return plan(self.card, way, cap, self.shared)

    def _best(self, starts: Sequence[Plan]) -> Plan | None:
        """The largest letters that one of the ways reaches; whole words go first."""
        best: Plan | None = None
        for start in starts:
            best = self._better(start, best)
        return best

    def _better(self, start: Plan, best: Plan | None) -> Plan | None:
        if best is None:
            return self._grown(start) if start.fits else None
        if not start.whole or best.letters.text + _NOTCH > _LARGEST * self.least:
            return best
        if best.whole and self.least * sqrt(1 / max(_fill(start), 0.01)) * _DOUBT < best.letters.text:
            return best
        low = start if not best.whole else self._plan(_way(start), best.letters.text + _NOTCH)
        return self._grown(low) if low.fits and low.whole else best

    def _grown(self, low: Plan) -> Plan:
        """The largest letters of this way, from some that fit: estimate by area, then close in on a notch."""
        base = low.letters.text
        good, bad = 0, floor((_LARGEST * self.least - base) / _NOTCH) + 1
        best, tried = low, low
        for count in range(64):
            if bad - good <= 1:
                break
            guess = floor((tried.letters.text * sqrt(1 / max(_crowded(tried), 0.05)) - base) / _NOTCH)
            # A guess from how full the last one was; when guesses do not close in, the middle.
            step = min(max(guess, good + 1), bad - 1) if count < _GUESSES else (good + bad) // 2
            tried = self._plan(_way(low), base + step * _NOTCH)
            if tried.fits and (tried.whole or not low.whole):
                good, best = step, tried
            else:
                bad = step
        return best
