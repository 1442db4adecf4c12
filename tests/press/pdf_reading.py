"""Reads a printed card back by other people's tools: letters with their inked boxes, text, picture."""

import itertools
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

import numpy as np
import pypdfium2
from numpy.typing import NDArray
from PIL import Image

MM = 72 / 25.4


@dataclass(frozen=True)
class Letter:
    """One printed letter: its inked box in mm from the top left of the page, and its size in points."""

    character: str
    left: float
    top: float
    right: float
    bottom: float

    @property
    def height(self) -> float:
        """Height of the ink in mm."""
        return self.bottom - self.top


@cache
def letters(pdf: bytes) -> tuple[Letter, ...]:
    """All letters of a one-page PDF in the order of its text, white space left out."""
    assert len(pypdfium2.PdfDocument(pdf)) == 1
    return sheet_letters(pdf, 0)


@cache
def sheet_letters(pdf: bytes, number: int) -> tuple[Letter, ...]:
    """The same of one page of several, counted from 0."""
    page = pypdfium2.PdfDocument(pdf)[number]
    height = page.get_height()
    text = page.get_textpage()
    whole = text.get_text_range()
    found = []
    for index, character in enumerate(whole):
        if character.isspace():
            continue
        left, bottom, right, top = text.get_charbox(index, loose=False)
        found.append(Letter(character, left / MM, (height - top) / MM, right / MM, (height - bottom) / MM))
    return tuple(found)


def page_size(pdf: bytes) -> tuple[float, float]:
    """Width and height of the page in mm."""
    page = pypdfium2.PdfDocument(pdf)[0]
    return page.get_width() / MM, page.get_height() / MM


def picture(pdf: bytes, dpi: int) -> Image.Image:
    """The page as a camera would see it, in grey."""
    image: Image.Image = pypdfium2.PdfDocument(pdf)[0].render(scale=dpi / 72).to_pil().convert("L")
    return image


def ink_heights(pdf: bytes, characters: set[str], dpi: int = 400) -> list[float]:
    """Heights in mm of the black ink of these characters, counted in rows of dots of a picture."""
    dots = np.asarray(picture(pdf, dpi)) < 128
    scale = dpi / 25.4
    heights = []
    for one in letters(pdf):
        if one.character in characters:
            left, right = int(one.left * scale), int(one.right * scale) + 1
            cut = dots[int(one.top * scale) : int(one.bottom * scale) + 1, left:right]
            # A letter cut out of black is not measured here.
            if cut.mean() < 0.6:
                heights.append(float(cut.any(axis=1).sum()) / scale)
    return heights


def boxes(found: tuple[Letter, ...]) -> NDArray[np.float64]:
    """Rows of left, top, right, bottom in mm."""
    return np.array([(one.left, one.top, one.right, one.bottom) for one in found])


def overlapping(found: tuple[Letter, ...], slack: float) -> Iterator[tuple[Letter, Letter]]:
    """Pairs of letters whose boxes lie over one another by more than `slack` mm both ways.

    Neighbours in a word are left out: the face itself draws some pairs ("AV", "r,") under one another.
    """
    left, top, right, bottom = boxes(found).T
    wide = np.minimum(right[:, None], right) - np.maximum(left[:, None], left)
    high = np.minimum(bottom[:, None], bottom) - np.maximum(top[:, None], top)
    pairs = np.argwhere(np.triu((wide > slack) & (high > slack), k=2))
    return ((found[a], found[b]) for a, b in itertools.islice(pairs, 10))
