"""Fits, prints and draws one card."""

from dataclasses import dataclass, replace
from functools import lru_cache
from math import ceil

from generator.outputs.press.composing import draw
from generator.outputs.press.door import print_pdf, print_svg
from generator.outputs.press.drawing import Sheet
from generator.outputs.press.fitting import Setting, setting
from generator.outputs.press.paper import NEAREST, SIZES, least_letter
from generator.outputs.press.splitting import CardPart, proposal
from generator.outputs.press.texts import demand_letters, unprintable
from generator.problems import NewelError
from generator.views.card import CardView

# Reading distances are proposed in steps of 100 mm, as people pace them out.
_STEP = 100.0


@dataclass(frozen=True, slots=True)
class CardFit:
    """How a card sits on its sheet.

    `letter_height` is the height of its capitals in mm: the largest that fit, or `least` (distance/300)
    when it does not fit; signal words are twice that. `lines_needed` and `lines_there` count lines of
    sentences in its columns of steps at that height. When it does not fit, `proposal` names the parts of
    a split, and `larger` the sheets (size, letter height) on which it would fit whole. Where no split fits,
    `nearer` is the longest reading distance in mm, in steps of 100, at which it would fit whole on its own
    sheet, 0 if none would do; None where that was not asked. `missing` names characters that cannot be
    printed.
    """

    fits: bool
    letter_height: float
    least: float
    size: str
    orientation: str
    columns: int
    lines_needed: int
    lines_there: int
    missing: tuple[str, ...] = ()
    proposal: tuple[CardPart, ...] = ()
    larger: tuple[tuple[str, float], ...] = ()
    nearer: float | None = None


@lru_cache(maxsize=4_000)
def fit(card: CardView) -> CardFit:
    """Measure a card; never raises for a card that does not fit or has characters without a letter."""
    strange = unprintable(card)
    if strange:
        return CardFit(False, 0.0, least_letter(card.read_from), card.size, "", 0, 0, 0, missing=strange)
    found = setting(card)
    if found.fits:
        return _measured(card, found)
    parts = proposal(card)
    nearer = None if parts else _nearer(card)
    return replace(_measured(card, found), proposal=parts, larger=_larger(card), nearer=nearer)


def _measured(card: CardView, found: Setting) -> CardFit:
    made = found.plan
    over = 0.0 if made.height > 0 else -made.height
    needed = ceil((made.needed + over) / made.letters.pitch)
    there = int(max(0.0, made.room) / made.letters.pitch)
    # Blocks are never broken, so a card may fail with a line to spare in the sum of its columns.
    return CardFit(
        found.fits, made.letters.text, least_letter(card.read_from), card.size,
        "landscape" if made.paper.width > made.paper.height else "portrait", made.count,
        needed if found.fits else max(needed, there + 1), there,
    )  # fmt: skip


def _larger(card: CardView) -> tuple[tuple[str, float], ...]:
    others = (replace(card, size=size) for size in SIZES if size != card.size)
    found = ((other.size, setting(other)) for other in others)
    return tuple((size, way.plan.letters.text) for size, way in found if way.fits)


def _nearer(card: CardView) -> float:
    """The longest shorter distance at which it fits, found by halving; 0 if not even from the nearest."""
    good, bad = ceil(NEAREST / _STEP), ceil(card.read_from / _STEP)
    if good >= bad or not _fits_from(card, good):
        return 0.0
    while bad - good > 1:
        middle = (good + bad) // 2
        good, bad = (middle, bad) if _fits_from(card, middle) else (good, middle)
    return good * _STEP


def _fits_from(card: CardView, steps: int) -> bool:
    return setting(replace(card, read_from=steps * _STEP)).fits


def sheet_of(card: CardView) -> Sheet:
    """The finished drawing; NewelError for a character without a letter or a card that does not fit."""
    demand_letters(card)
    found = setting(card)
    if not found.fits:
        measured = _measured(card, found)
        raise NewelError(
            "card-too-small",
            f"the card {card.title!r} needs {measured.lines_needed} lines and has {measured.lines_there}"
            f" with letters of {measured.least:.1f} mm on {card.size}",
            "a card is never set in smaller letters than its reading distance asks for",
            "split it, take a larger sheet, or let it be read from nearer",
        )
    return draw(card, found.plan)


@lru_cache(maxsize=500)
def card_pdf(card: CardView) -> bytes:
    """The card as a tagged PDF (exported as PDF/UA-1) with its letters in it; the same bytes every time."""
    return print_pdf(sheet_of(card), card.dated)


@lru_cache(maxsize=500)
def card_svg(card: CardView) -> str:
    """The same drawing as SVG, to be shown as a picture with alternative text."""
    return print_svg(sheet_of(card), card.dated)
