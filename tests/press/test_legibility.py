"""Letters measured on the printed page against the reading distance.

Floor: capitals of message text >= distance/300, of signal words >= distance/150
(ANSI Z535.2 clause 9.2.3, as quoted publicly).
"""

from collections.abc import Callable
from dataclasses import replace

import pytest

from generator.outputs.press import SIZES, card_pdf, fit, least_letter
from generator.outputs.press.card import sheet_of
from generator.outputs.press.drawing import Code, Sign
from generator.views.card import CardView, Orientation
from tests.press import samples
from tests.press.pdf_reading import ink_heights, letters, overlapping, page_size

CARDS: tuple[Callable[[], CardView], ...] = (
    samples.drill_card,
    samples.etch_card,
    samples.copper_card,
    samples.door_card,
    samples.withdrawn_card,
)
FLAT_CAPITALS = set("EFHIKLTXZ")
FLAT_LOWER = set("xvz")
# One row of dots at 400 dpi, and a little for what a page description rounds away, in mm.
DOT = 0.07
EVERY_SHEET = [(size, orientation) for size in SIZES for orientation in ("portrait", "landscape")]


def near(card: CardView) -> CardView:
    """The same card for a reader who stands so near that it fits every sheet."""
    return replace(card, read_from=660.0)


@pytest.mark.parametrize("make", CARDS, ids=lambda make: make.__name__)
def test_no_letter_is_under_the_floor(make: Callable[[], CardView]) -> None:
    card = make()
    heights = ink_heights(card_pdf(card), FLAT_CAPITALS)
    assert len(heights) > 5
    assert min(heights) >= card.read_from / 300 - DOT


@pytest.mark.parametrize(("size", "orientation"), EVERY_SHEET)
def test_every_sheet_both_ways(size: str, orientation: Orientation) -> None:
    card = replace(near(samples.etch_card()), size=size, orientation=orientation)
    pdf = card_pdf(card)
    width, height = page_size(pdf)
    assert (width > height) == (orientation == "landscape")
    found = letters(pdf)
    assert min(ink_heights(pdf, FLAT_CAPITALS, 300)) >= 2.2 - 0.09
    margin = 7.2
    assert min(one.left for one in found) >= margin
    assert max(one.right for one in found) <= width - margin
    assert min(one.top for one in found) >= margin
    assert max(one.bottom for one in found) <= height - margin
    assert not list(overlapping(found, 0.08))


@pytest.mark.parametrize("make", CARDS, ids=lambda make: make.__name__)
def test_no_letters_lie_over_one_another(make: Callable[[], CardView]) -> None:
    assert not list(overlapping(letters(card_pdf(make())), 0.1))


@pytest.mark.parametrize("make", CARDS, ids=lambda make: make.__name__)
def test_no_letter_lies_over_a_sign_or_the_code(make: Callable[[], CardView]) -> None:
    card = make()
    found = letters(card_pdf(card))
    for mark in sheet_of(card).marks:
        if isinstance(mark, Sign | Code):
            inside = [
                one.character
                for one in found
                if one.right > mark.x + 0.1 and one.left < mark.x + mark.size - 0.1
                and one.bottom > mark.y + 0.1 and one.top < mark.y + mark.size - 0.1
            ]  # fmt: skip
            assert not inside, mark


def test_an_overlap_would_be_seen() -> None:
    found = letters(card_pdf(samples.drill_card()))
    moved = replace(found[0], left=found[3].left, right=found[3].right)
    assert list(overlapping((moved, *found[1:]), 0.1))


def test_the_small_letters_are_large_ones() -> None:
    """An x-height of at least 0.7 cap heights keeps words readable (common practice, no source)."""
    pdf = card_pdf(samples.etch_card())
    assert min(ink_heights(pdf, FLAT_LOWER)) >= 0.7 * min(ink_heights(pdf, FLAT_CAPITALS))


@pytest.mark.parametrize("word", ["STOP", "DANGER", "WEAR"])
def test_signal_words_are_twice_the_floor(word: str) -> None:
    card = samples.etch_card()
    found = letters(card_pdf(card))
    text = "".join(one.character for one in found)
    starts = [at for at in range(len(text)) if text.startswith(word, at)]
    heights = [max(one.height for one in found[at : at + len(word)]) for at in starts]
    assert max(heights) >= card.read_from / 150


def test_the_time_is_larger_than_its_window() -> None:
    found = letters(card_pdf(samples.etch_card()))
    text = "".join(one.character for one in found)
    dwell, window = text.index("100s"), text.index("atleast90s") + len("atleast")
    assert found[dwell].height > 1.5 * found[window].height


@pytest.mark.parametrize(("distance", "height"), [(1500.0, 5.0), (2000.0, 20 / 3), (3048.0, 10.16)])
def test_the_floor_is_the_quoted_table(distance: float, height: float) -> None:
    """10 ft: 0.40 in, the favourable row of the table in ANSI Z535.2 as quoted publicly."""
    assert least_letter(distance) == pytest.approx(height, rel=1e-3)


def test_letters_said_are_letters_printed() -> None:
    card = samples.etch_card()
    assert min(ink_heights(card_pdf(card), FLAT_CAPITALS)) == pytest.approx(
        fit(card).letter_height, abs=1.2 * DOT
    )
