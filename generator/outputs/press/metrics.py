"""Widths and heights of the bundled letters, read once from the font files themselves."""

import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from generator.outputs.press.sfnt import measures

FONTS = Path(__file__).parent.parent / "fonts"
# Kerning is left to the typesetter; it closes pairs far more often than it opens them.
_SLACK = 1.005


@dataclass(frozen=True, slots=True)
class Face:
    """One weight: its file, the family by which the typesetter finds it, cap height and advances in ems."""

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


def _read(file: str, family: str) -> Face:
    read = measures(FONTS / file)
    return Face(file, family, read.cap, read.advances)


@cache
def medium() -> Face:
    """The weight of sentences."""
    return _read("IBMPlexSansCondensed-Medium.ttf", "IBM Plex Sans Cond Medm")


@cache
def bold() -> Face:
    """The weight of verbs, numbers, times and signal words."""
    return _read("IBMPlexSansCondensed-Bold.ttf", "IBM Plex Sans")


def composed(text: str) -> str:
    """The same text composed (NFC), each tab or line break a space."""
    return unicodedata.normalize("NFC", text).replace("\t", " ").replace("\n", " ")


def tidy(text: str) -> str:
    """The same, with each run of spaces as one; no-break spaces stay."""
    return " ".join(part for part in composed(text).split(" ") if part)


def printable(letters: Iterable[str]) -> frozenset[str]:
    """The letters without signs that have no shape of their own (joiners, direction marks).

    They could turn a text round unseen.
    """
    return frozenset(c for c in letters if unicodedata.category(c) not in ("Cc", "Cf", "Co"))


def missing(texts: Iterable[str], letters: frozenset[str]) -> tuple[str, ...]:
    """Characters of the texts, once composed, that are not among the letters, each once, in order."""
    each = tuple(texts)
    together = "".join(each)
    # Nearly always all are there, which takes no look at each text.
    if letters.issuperset(together) and unicodedata.is_normalized("NFC", together):
        return ()
    seen = dict.fromkeys("".join(map(tidy, each)))
    return tuple(c for c in seen if c not in letters)
