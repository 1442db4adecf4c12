"""Widths and heights of the bundled letters, read once from the font files themselves."""

import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from fontTools.ttLib import TTFont

FONTS = Path(__file__).parent.parent / "fonts"
# Kerning is left to the typesetter; it closes pairs far more often than it opens them.
_SLACK = 1.005


@dataclass(frozen=True, slots=True)
class Face:
    """One weight: advance of each character and cap height, both in parts of the em square."""

    file: str
    family: str
    cap: float
    advances: dict[str, float]

    def width(self, text: str, cap: float) -> float:
        """Width of `text` in mm when its capitals are `cap` mm high; ValueError for a missing character."""
        try:
            return sum(map(self.advances.__getitem__, text)) * cap / self.cap * _SLACK
        except KeyError as error:
            raise ValueError(f"no letter for {error.args[0]!r}") from error


def _read(file: str) -> Face:
    with TTFont(FONTS / file, lazy=True) as font:
        em = font["head"].unitsPerEm
        widths = font["hmtx"].metrics
        advances = {chr(code): widths[glyph][0] / em for code, glyph in font.getBestCmap().items()}
        return Face(file, font["name"].getDebugName(1), font["OS/2"].sCapHeight / em, advances)


@cache
def medium() -> Face:
    """The weight of sentences."""
    return _read("IBMPlexSansCondensed-Medium.ttf")


@cache
def bold() -> Face:
    """The weight of verbs, numbers, times and signal words."""
    face = _read("IBMPlexSansCondensed-Bold.ttf")
    return Face(face.file, "IBM Plex Sans", face.cap, face.advances)


def tidy(text: str) -> str:
    """The same text composed (NFC), with each run of white space as one space; no-break spaces stay."""
    composed = unicodedata.normalize("NFC", text)
    return " ".join(part for part in composed.replace("\t", " ").replace("\n", " ").split(" ") if part)


def missing(texts: Iterable[str], letters: frozenset[str]) -> tuple[str, ...]:
    """Characters of the texts that are not among the letters, each once, in order.

    Signs without a shape of their own (joiners, direction marks) are refused with them: they could
    turn a text round unseen.
    """
    seen = dict.fromkeys(character for text in texts for character in tidy(text))
    return tuple(c for c in seen if c not in letters or unicodedata.category(c) in ("Cc", "Cf", "Co"))
