"""The drawn signs: shape and colour of their family in ISO 3864-1, nothing but plain paths."""

from pathlib import Path
from xml.etree import ElementTree

import pytest

from generator.outputs.press.metrics import FONTS, bold, medium
from generator.outputs.signs import sign_name, sign_names, sign_svg

SAFETY_ALPHABET = {"M": "#00538f", "W": "#f9b000", "E": "#16704a", "F": "#a8201f", "P": "#a8201f"}


@pytest.mark.parametrize("name", sign_names())
def test_a_sign_is_a_plain_drawing(name: str) -> None:
    text = sign_svg(name)
    root = ElementTree.fromstring(text)
    assert root.get("viewBox") == "0 0 100 100"
    assert root[0].text
    tags = {node.tag.rpartition("}")[2] for node in root.iter()}
    assert tags <= {"svg", "title", "g", "path", "circle", "rect"}
    assert "style" not in text


@pytest.mark.parametrize(
    "name", [name for name in sign_names() if name[0] in SAFETY_ALPHABET and name[1:].isdigit()]
)
def test_a_sign_has_the_colour_of_its_family(name: str) -> None:
    assert SAFETY_ALPHABET[name[0]] in sign_svg(name)


@pytest.mark.parametrize(
    "number", ["M004", "M008", "M009", "M010", "M013", "M026", "W017", "W023", "E011", "E012"]
)
def test_what_the_demo_lab_asks_for_is_drawn(number: str) -> None:
    assert sign_name(number) == number


@pytest.mark.parametrize(
    ("number", "name"), [("M047", "M001"), ("W099", "W001"), ("", "M001"), ("E999", "E003")]
)
def test_a_sign_that_is_not_drawn_becomes_the_general_one(number: str, name: str) -> None:
    assert sign_name(number) == name


def test_every_letter_is_as_wide_as_another_reader_says() -> None:
    """Against fontTools."""
    from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

    for face in (medium(), bold()):
        font = TTFont(FONTS / face.file)
        em = font["head"].unitsPerEm
        widths = font["hmtx"].metrics
        assert face.advances == {chr(c): widths[g][0] / em for c, g in font.getBestCmap().items()}
        assert face.cap == font["OS/2"].sCapHeight / em
        assert len({face.advances[digit] for digit in "0123456789"}) == 1


def test_the_letters_come_with_their_licence_and_are_small() -> None:
    files = [path for path in Path(FONTS).iterdir() if path.suffix == ".ttf"]
    assert "SIL OPEN FONT LICENSE" in (FONTS / "OFL.txt").read_text("utf-8").upper()
    assert sum(path.stat().st_size for path in files) < 3_000_000
