"""Every card of the demo lab on paper: it fits, keeps clear of edges and of itself, is read and is found."""

import hashlib
import io
import os
import subprocess
import sys
from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import numpy as np
import pypdf
import pytest
import zxingcpp
from PIL import Image, ImageDraw

from generator.outputs.press import card_pdf, fit, least_letter
from generator.outputs.press.card import sheet_of
from generator.outputs.press.door import print_pdf
from generator.outputs.press.drawing import Box, Code, Sign, Text
from generator.views.card import CardView
from tests.press.demo_cards import SITE, all_cards, line_cards, name
from tests.press.pdf_reading import Letter, letters, overlapping, page_size, picture

ROOT = Path(__file__).parents[2]
MARGIN = 7.2
CAPITALS, SMALL = frozenset("EFHIKLTXZ"), frozenset("xvz")
# What a page description rounds away, in mm.
HAIR = 0.03
DPI = 150
IDS = [
    "drill-card", "clean-card", "coat-card", "etch-card", "etch-card-es", "copper-card", "finish-card",
    "door-card",
]  # fmt: skip
EACH = range(58)


def test_every_card_is_here() -> None:
    assert [card.card for card in line_cards()] == IDS
    assert len(all_cards()) == len(EACH)
    assert len(set(map(name, all_cards()))) == len(EACH)


@pytest.fixture(params=EACH)
def card(request: pytest.FixtureRequest) -> CardView:
    number: int = request.param
    return all_cards()[number]


def test_it_fits_as_a_draft_and_as_an_issue(card: CardView) -> None:
    issued = replace(card, status="posted", issue="12", check_code="7F3KQ", good_until="2027-11-25")
    assert fit(card).fits
    assert fit(issued).fits
    assert fit(replace(card, status="draft")).fits


def test_its_letters_are_as_high_as_its_reader_stands_far(card: CardView) -> None:
    """Boxes of the glyphs: capitals of distance/300 at least (ANSI Z535.2 as quoted publicly).

    Small letters of 0.7 of the capitals keep words readable (common practice, no source).
    """
    found = letters(card_pdf(card))
    capitals = [one.height for one in found if one.character in CAPITALS]
    small = [one.height for one in found if one.character in SMALL]
    assert min(capitals) >= least_letter(card.read_from) - HAIR
    assert min(small) >= 0.7 * min(capitals)


def test_nothing_is_outside_the_margins_or_over_anything_else(card: CardView) -> None:
    pdf = card_pdf(card)
    width, height = page_size(pdf)
    # The word DRAFT lies under everything on purpose.
    found = tuple(one for one in letters(pdf) if one.height < 30)
    assert min(one.left for one in found) >= MARGIN
    assert max(one.right for one in found) <= width - MARGIN
    # Tall small letters of the title rise over its capitals; a desk printer leaves 5 mm at most.
    assert min(one.top for one in found) >= 6.0
    assert max(one.bottom for one in found) <= height - MARGIN
    assert not list(overlapping(found, 0.12))
    for mark in sheet_of(card).marks:
        if isinstance(mark, Box):
            assert mark.x >= MARGIN
            assert mark.x + mark.width <= width - MARGIN
            assert mark.y + mark.height <= height - MARGIN
        if isinstance(mark, Sign | Code):
            assert not inside(found, mark.x, mark.y, mark.size)


def inside(found: tuple[Letter, ...], x: float, y: float, side: float) -> list[str]:
    """The letters that reach into a square by more than a tenth of a millimetre."""
    within = (
        one for one in found if one.right > x + 0.1 and one.left < x + side - 0.1 and one.bottom > y + 0.1
    )
    return [one.character for one in within if one.top < y + side - 0.1]


def test_a_mark_holds_its_words(card: CardView) -> None:
    """No letter of a framed mark, hanging ones included, reaches into the line of its frame."""
    found = letters(card_pdf(card))
    for mark in sheet_of(card).marks:
        if isinstance(mark, Box) and mark.line and 0 < mark.radius < mark.height / 2 - 0.01:
            low, high = mark.y + mark.line / 2, mark.y + mark.height - mark.line / 2
            middle = mark.y + mark.height / 2
            framed = [
                one for one in found
                if mark.x < one.left and one.right < mark.x + mark.width and one.top < middle < one.bottom
            ]  # fmt: skip
            assert framed
            assert min(one.top for one in framed) > low
            assert max(one.bottom for one in framed) < high


def test_no_line_begins_with_what_says_nothing_alone(card: CardView) -> None:
    """A point between two texts, or the number of what the line above names."""
    for mark in sheet_of(card).marks:
        if isinstance(mark, Text):
            starts = [line[0].text.lstrip() or line[1].text for line in mark.lines if line]
            assert not [start for start in starts[1:] if start.startswith("\u00b7")]
            assert not [start for start in starts[1:] if start.rstrip(".,").isdigit() and len(start) < 4]


def test_a_sign_has_words_of_its_own(card: CardView) -> None:
    """Beside each sign of wear and hazard stands a text; never two signs in a row before one."""
    marks = [mark for mark in sheet_of(card).marks if isinstance(mark, Sign | Text)]
    signs = [(one, other) for one, other in pairwise(marks) if isinstance(one, Sign) and one.name[0] in "MW"]
    assert len(signs) == len(card.wear) + len({hazard.symbol for hazard in card.hazards})
    assert all(isinstance(other, Text) for _, other in signs)


def test_its_code_is_read_under_a_glare_and_askew(card: CardView) -> None:
    """At 150 dots an inch: the whole card as it hangs; then its code under a lamp, at 10 degrees."""
    image = picture(card_pdf(card), DPI)
    assert [found.text for found in zxingcpp.read_barcodes(image)] == [card.address]
    code = next(mark for mark in sheet_of(card).marks if isinstance(mark, Code))
    left, top, side = (value * DPI / 25.4 for value in (code.x, code.y, code.size))
    middle, radius = (left + 0.62 * side, top + 0.6 * side), 0.1 * side
    spot = (middle[0] - radius, middle[1] - radius, middle[0] + radius, middle[1] + radius)
    ImageDraw.Draw(image).ellipse(spot, fill=255)
    around = image.crop((int(left - side), int(top - side), int(left + 2 * side), int(top + 2 * side)))
    for degrees in (10, -10):
        seen = around.rotate(degrees, expand=True, fillcolor=255, resample=Image.Resampling.BICUBIC)
        assert [found.text for found in zxingcpp.read_barcodes(seen)] == [card.address]
    assert card.address.startswith(SITE)


def test_a_grey_copy_keeps_its_signs(card: CardView) -> None:
    """In grey, each sign's picture differs from its ground by half the scale at least."""
    image = np.asarray(picture(card_pdf(card), DPI), dtype=np.int16)
    for mark in sheet_of(card).marks:
        if isinstance(mark, Sign):
            x, y, side = (round(value * DPI / 25.4) for value in (mark.x, mark.y, mark.size))
            cut = image[y : y + side, x : x + side]
            assert np.percentile(cut, 95) - np.percentile(cut, 5) >= 128, mark.name


def test_the_address_in_letters_is_the_page_of_the_card_s_own_procedure(card: CardView) -> None:
    """A class has times of its own, so its cards must not lead to the page of the whole procedure."""
    assert card.address_shown == f"{SITE.removeprefix('https://')}procedures/{card.procedure}"


def test_cards_of_a_class_are_told_from_the_others() -> None:
    heads = [(card.title, card.procedure_title, card.language) for card in all_cards() if card.steps]
    assert len(set(heads)) == len(heads)


def test_each_bears_its_own_title_and_language() -> None:
    """Though the typesetter remembers what it has set for the cards before."""
    for card in all_cards():
        reader = pypdf.PdfReader(io.BytesIO(card_pdf(card)))
        assert reader.metadata is not None
        assert reader.metadata.title == sheet_of(card).title
        assert str(reader.root_object["/Lang"]) == card.language


def test_each_is_the_same_bytes_in_another_process() -> None:
    code = (
        "import hashlib, sys; from tests.press.demo_cards import all_cards;"
        "from generator.outputs.press import card_pdf;"
        "[print(hashlib.sha256(card_pdf(card)).hexdigest()) for card in reversed(all_cards())]"
    )
    there = {**os.environ, "TZ": "Pacific/Auckland", "SOURCE_DATE_EPOCH": "1", "PYTHONHASHSEED": "7"}
    done = subprocess.run([sys.executable, "-c", code], cwd=ROOT, env=there, capture_output=True, check=True)
    here = [hashlib.sha256(card_pdf(card)).hexdigest() for card in reversed(all_cards())]
    assert done.stdout.decode().split() == here


def test_printed_again_it_is_the_same_bytes() -> None:
    card = all_cards()[0]
    assert io.BytesIO(print_pdf(sheet_of(card), card.dated)).getvalue() == card_pdf(card)
