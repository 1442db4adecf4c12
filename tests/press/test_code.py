"""The QR code, read as a telephone would read it: small, askew, with a glare on it."""

from collections.abc import Callable
from re import findall

import pytest
import segno
import zxingcpp
from PIL import Image, ImageDraw

from generator.outputs.press import card_pdf
from generator.outputs.press.card import sheet_of
from generator.outputs.press.codes import code_of
from generator.outputs.press.drawing import Code
from generator.views.card import CardView
from tests.press import samples
from tests.press.pdf_reading import picture

DPI = 150


def read(image: Image.Image) -> list[str]:
    return [code.text for code in zxingcpp.read_barcodes(image)]


def place_of_code(card: CardView) -> tuple[float, float, float]:
    """Left, top and side of the code in mm, quiet zone included."""
    code = next(mark for mark in sheet_of(card).marks if isinstance(mark, Code))
    return code.x, code.y, code.size


def glare(image: Image.Image, card: CardView, share: float) -> Image.Image:
    """The picture with a white disc over `share` of the code's side, in its middle."""
    left, top, side = (value * DPI / 25.4 for value in place_of_code(card))
    spot = image.copy()
    middle_x, middle_y, radius = left + side / 2, top + side / 2, side * share / 2
    ImageDraw.Draw(spot).ellipse(
        (middle_x - radius, middle_y - radius, middle_x + radius, middle_y + radius), fill=255
    )
    return spot


@pytest.mark.parametrize("make", [samples.drill_card, samples.etch_card, samples.door_card])
def test_the_code_is_read_askew_with_a_glare(make: Callable[[], CardView]) -> None:
    card = make()
    image = picture(card_pdf(card), DPI)
    assert read(image) == [card.address]
    seen = glare(image, card, 0.25).rotate(10, expand=True, fillcolor=255, resample=Image.Resampling.BICUBIC)
    assert read(seen) == [card.address]


def test_a_glare_over_most_of_it_is_not_read() -> None:
    card = samples.drill_card()
    assert read(glare(picture(card_pdf(card), DPI), card, 0.8)) == []


def test_the_code_is_large_enough_for_a_telephone() -> None:
    for make in (samples.drill_card, samples.etch_card):
        assert place_of_code(make())[2] >= 23.0


def test_another_maker_of_codes_draws_the_same_modules() -> None:
    """Against segno, by one of the eight masks of ISO/IEC 18004; capitals leave no choice of mode."""
    address = "HTTPS://LARKMERE.EXAMPLE/CARDS"
    drawn = code_of(address, 23.0, "")
    made = [segno.make_qr(address, error="q", boost_error=False, mask=mask) for mask in range(8)]
    assert {code.symbol_size(border=4) for code in made} == {(drawn.modules, drawn.modules)}
    assert inked(drawn) in [matrix(code) for code in made]


def matrix(code: segno.QRCode) -> frozenset[tuple[int, int]]:
    """The dark modules in a quiet zone of four, each by its column and row."""
    rows = enumerate(code.matrix_iter(border=4))
    return frozenset((x, y) for y, row in rows for x, dark in enumerate(row) if dark)


def inked(code: Code) -> frozenset[tuple[int, int]]:
    """The modules that the strokes of a path go through: along the middle of a row, one module thick."""
    found: set[tuple[int, int]] = set()
    x = y = 0.0
    for step, right, _, down in findall(r"([Mmh])(-?[\d.]+)( (-?[\d.]+))?", code.path):
        if step == "h":
            found |= {(int(x) + n, int(y)) for n in range(int(right))}
        start = (0.0, 0.0) if step == "M" else (x, y)
        x, y = start[0] + float(right), start[1] + float(down or 0)
    return frozenset(found)
