"""Finds the largest letters with which a card fits its sheet, or says by how much it does not."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from math import floor, sqrt

from generator.outputs.press.paper import Paper, least_letter, paper
from generator.outputs.press.plans import Plan, Shared, Way, plan, without_steps
from generator.outputs.press.steps import DENSITIES
from generator.outputs.press.texts import own_texts
from generator.views.card import CardView

_NOTCH = 0.05
_LARGEST = 3.0
# Columns narrower than this many cap heights hold too few words in a line (about 36 letters).
_NARROWEST = 27.0
_COLUMNS = {"portrait": (1, 2), "landscape": (1, 2, 3)}
# What the steps take in one way tells what they take in another to so much, columns less numbers and discs
# this many cap heights wide.
_DOUBT = 0.8
_SIDE = 5.0
# Square cap heights of print to a letter, in parts of the sheet: measured over the cards of the demo lab.
_INKED = 0.44
# By how much a sheet may seem too full and lines yet fall so that all goes in.
_LUCK = 1.1
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
    return _Search(least_letter(card.read_from), Shared(card)).setting()


def _ways(card: CardView, least: float) -> list[Way]:
    lies = ("portrait", "landscape") if card.orientation == "either" else (card.orientation,)
    sheets = [paper(card.size, lie) for lie in lies]
    if not card.steps:
        return [Way(sheet, 1, False, "loose") for sheet in sheets]
    ways = [
        way
        for sheet in sheets
        for way in (
            *(Way(sheet, count, True, "loose") for count in _COLUMNS[_lie(sheet)][:-1]),
            *(Way(sheet, count, False, "loose") for count in reversed(_COLUMNS[_lie(sheet)])),
        )
    ]
    return [way for way in ways if way.count == 1 or _column(way) >= _NARROWEST * least]


def _column(way: Way) -> float:
    """About the width of a column of steps in mm."""
    return way.paper.inner_width * (0.65 if way.rail else 1.0) / way.count


def _lie(sheet: Paper) -> str:
    return "landscape" if sheet.width > sheet.height else "portrait"


def _fill(made: Plan) -> float:
    return made.needed / made.room if made.room > 0 else float("inf")


def _crowded(made: Plan) -> float:
    """How full the sheet is, in parts of its height: what the columns need, and what is around them."""
    return 1 - (made.height - made.needed / made.count) / made.paper.inner_height


def _way(made: Plan) -> Way:
    return Way(made.paper, made.count, made.around.rail > 0, made.density)


@dataclass(frozen=True, slots=True)
class _Search:
    """The search for one card, with what its plans share.

    Letters grow in notches from the least; a notch is counted from 0.
    """

    least: float
    shared: Shared

    def setting(self) -> Setting:
        """The loosest density in which a way fits with whole words; failing that, what came nearest."""
        ways, guess = _ways(self.shared.card, self.least), self._guess()
        split: Plan | None = None
        for density in DENSITIES if self.shared.card.steps else DENSITIES[:1]:
            found = self._best([replace(way, density=density) for way in ways], guess)
            if found and found.whole:
                return Setting(found, True)
            split = found or split
        if split:
            return Setting(split, True)
        # Nothing is refused for what was only estimated.
        plans = (self._plan(replace(way, density=DENSITIES[-1]), 0) for way in ways)
        nearest = min(plans, key=lambda made: (not made.fits, _fill(made)))
        return Setting(nearest, nearest.fits)

    def _plan(self, way: Way, notch: int) -> Plan:
        return plan(self.shared, way, self.least + notch * _NOTCH)

    def _best(self, ways: Sequence[Way], guess: int) -> Plan | None:
        """The largest letters that one of the ways reaches, from a guess on; whole words go first."""
        best: Plan | None = None
        tried: Plan | None = None
        for way in ways:
            notch = self._notch(best) + 1 if best and best.whole else 0
            if notch > self._most or (tried and self._hopeless(way, notch, tried)):
                continue
            start = self._plan(way, notch if tried else guess)
            tried = tried or start
            found = self._grown(start, notch)
            best = _better(found, best)
        return best

    @property
    def _most(self) -> int:
        return floor((_LARGEST - 1) * self.least / _NOTCH)

    def _notch(self, made: Plan) -> int:
        return round((made.letters.text - self.least) / _NOTCH)

    def _guess(self) -> int:
        """Where to begin to look: by the letters that there are to print and the sheet that takes them."""
        sheet = paper(self.shared.card.size, "portrait")
        count = sum(map(len, own_texts(self.shared.card)))
        cap = sqrt(_INKED * sheet.inner_width * sheet.inner_height / max(count, 1))
        return min(max(floor((cap - self.least) / _NOTCH), 0), self._most)

    def _hopeless(self, way: Way, notch: int, tried: Plan) -> bool:
        """Whether a way cannot hold the steps, by what they took in another; it need not be set then."""
        made = without_steps(self.shared, way, self.least + notch * _NOTCH)
        if not tried.blocks or not tried.whole:
            return False
        was, cap = tried.letters.text, made.letters.text
        lines, there = tried.column - _SIDE * was, made.column - _SIDE * cap
        if made.room <= 0 or there <= 0:
            return True
        # What stays even in an endless line grows as the letters do, the rest as their square.
        stays = self.shared.shortest(tried.density)
        rest = (tried.needed - stays * was) * (cap / was) ** 2 * lines / there
        return (stays * cap + rest) * _DOUBT > made.room

    def _grown(self, start: Plan, least: int) -> Plan | None:
        """The largest letters of this way from notch `least` on: estimate by area, close in on a notch."""
        good, bad = least - 1, self._most + 1
        best: Plan | None = None
        tried = start
        for count in range(64):
            notch = self._notch(tried)
            if tried.fits and (tried.whole or not (best and best.whole)):
                good, best = max(good, notch), tried
                bad = min(bad, self._above(tried))
            else:
                bad = min(bad, notch, self._above(tried))
            if bad - good <= 1:
                break
            guess = self._notch(tried) + self._away(tried)
            # A guess from how full the last one was; when guesses do not close in, the middle.
            inside = min(max(guess, good + 1), bad - 1)
            tried = self._plan(_way(tried), inside if count < _GUESSES else (good + bad) // 2)
        return best

    def _away(self, made: Plan) -> int:
        """By how many notches the letters could grow, by how full the sheet is."""
        text = made.letters.text
        return floor((text * sqrt(1 / max(_crowded(made), 0.05)) - text) / _NOTCH)

    def _above(self, made: Plan) -> int:
        """A notch too large for certain: print grows as the letters at least, and shrinks as their square."""
        full = max(_crowded(made) / _LUCK, 0.05)
        text = made.letters.text * (1 / full if full < 1 else sqrt(1 / full))
        return floor((text - self.least) / _NOTCH) + 1


def _better(found: Plan | None, best: Plan | None) -> Plan | None:
    """The plan with whole words, then the one with larger letters."""
    if found is None or best is None:
        return found or best
    return max(best, found, key=lambda made: (made.whole, made.letters.text))
