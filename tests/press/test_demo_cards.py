"""The demo lab's own cards on paper: they fit, keep clear of edges and of each other, and are found."""

from dataclasses import replace

import numpy as np
import pytest
import zxingcpp
from PIL import Image, ImageDraw

from generator.outputs.press import card_pdf, fit
from generator.outputs.press.card import sheet_of
from generator.outputs.press.drawing import Box, Code, Sign
from generator.views.card import CardView
from tests.press.demo_cards import SITE, line_cards
from tests.press.pdf_reading import ink_heights, letters, overlapping, page_size, picture

MARGIN = 7.2
IDS = [
    "drill-card", "clean-card", "coat-card", "etch-card", "etch-card-es", "copper-card", "finish-card",
    "door-card",
]  # fmt: skip


def the(id: str) -> CardView:
    return next(card for card in line_cards() if card.card == id)


def test_every_card_is_here() -> None:
    assert [card.card for card in line_cards()] == IDS


@pytest.mark.parametrize("id", IDS)
def test_it_fits_as_a_draft_and_as_an_issue(id: str) -> None:
    card = the(id)
    issued = replace(card, status="posted", issue="12", check_code="7F3KQ", good_until="2027-11-25")
    assert fit(card).fits
    assert fit(issued).fits


def test_the_etch_cards_are_read_from_where_the_student_stands() -> None:
    """1.5 m, so capitals of 5 mm at least (distance/300, ANSI Z535.2 as quoted publicly)."""
    for id, distance in (("etch-card", 1500), ("etch-card-es", 1400)):
        assert the(id).read_from == distance
        assert min(ink_heights(card_pdf(the(id)), set("EFHIKLTXZ"), 300)) >= distance / 300 - 0.09


@pytest.mark.parametrize("id", IDS)
def test_nothing_is_outside_the_margins_or_over_anything_else(id: str) -> None:
    pdf = card_pdf(the(id))
    width, height = page_size(pdf)
    # The word DRAFT lies under everything on purpose.
    found = tuple(one for one in letters(pdf) if one.height < 30)
    assert min(one.left for one in found) >= MARGIN
    assert max(one.right for one in found) <= width - MARGIN
    # Tall small letters of the title rise over its capitals; a desk printer leaves 5 mm at most.
    assert min(one.top for one in found) >= 6.0
    assert max(one.bottom for one in found) <= height - MARGIN
    assert not list(overlapping(found, 0.12))
    for mark in sheet_of(the(id)).marks:
        if isinstance(mark, Box):
            assert mark.x >= MARGIN
            assert mark.x + mark.width <= width - MARGIN
            assert mark.y + mark.height <= height - MARGIN
        if isinstance(mark, Sign):
            assert not [
                one for one in found
                if one.right > mark.x + 0.1 and one.left < mark.x + mark.size - 0.1
                and one.bottom > mark.y + 0.1 and one.top < mark.y + mark.size - 0.1
            ]  # fmt: skip


@pytest.mark.parametrize("id", ["drill-card", "etch-card-es", "copper-card", "door-card"])
def test_the_code_is_read_askew_under_a_glare(id: str) -> None:
    card = the(id)
    image = picture(card_pdf(card), 150)
    code = next(mark for mark in sheet_of(card).marks if isinstance(mark, Code))
    left, top, side = (value * 150 / 25.4 for value in (code.x, code.y, code.size))
    middle, radius = (left + 0.62 * side, top + 0.6 * side), 0.1 * side
    spot = (middle[0] - radius, middle[1] - radius, middle[0] + radius, middle[1] + radius)
    ImageDraw.Draw(image).ellipse(spot, fill=255)
    seen = image.rotate(10, expand=True, fillcolor=255, resample=Image.Resampling.BICUBIC)
    assert [found.text for found in zxingcpp.read_barcodes(seen)] == [card.address]
    assert card.address.startswith(f"{SITE}cards/current/")


def test_a_grey_copy_keeps_the_signs_apart() -> None:
    """In grey, each sign's picture differs from its ground by half the scale at least."""
    card = the("etch-card")
    image = np.asarray(picture(card_pdf(card), 150), dtype=np.int16)
    for mark in sheet_of(card).marks:
        if isinstance(mark, Sign):
            x, y, side = (round(value * 150 / 25.4) for value in (mark.x, mark.y, mark.size))
            cut = image[y : y + side, x : x + side]
            assert np.percentile(cut, 95) - np.percentile(cut, 5) >= 128, mark.name
