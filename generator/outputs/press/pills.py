"""Framed marks for a state that must not be missed: a picture of its own and the words."""

from collections.abc import Sequence
from functools import lru_cache, partial
from itertools import pairwise
from unicodedata import combining, normalize

from generator.outputs.press.blocks import Block, Late, abreast
from generator.outputs.press.drawing import Box, Run, Sign, Text
from generator.outputs.press.letters import Letters
from generator.outputs.press.wrapping import width
from generator.views.card import CardMark

# White over and under its capitals in cap heights: behind a line of text its frame stays clear of what hangs
# from the line above, and what hangs from its own words stays inside. An accent takes more, a capital's most.
_OVER, _ACCENT, _CAPITAL, _UNDER = 0.24, 0.36, 0.64, 0.52
# Side of its picture in cap heights.
_SIDE = 1.25


def over(mark: CardMark) -> float:
    """The white over the capitals of a mark in cap heights."""
    return _over(mark.text)


@lru_cache(maxsize=500)
def _over(text: str) -> float:
    letters = normalize("NFD", text)
    under = [letter for letter, accent in pairwise(letters) if combining(accent)]
    return _CAPITAL if any(map(str.isupper, under)) else _ACCENT if under else _OVER


def low(marks: Sequence[CardMark]) -> bool:
    """True when the marks can stand behind a line of text, under another."""
    return all(over(mark) == _OVER for mark in marks)


def _height(mark: CardMark, letters: Letters) -> float:
    return (over(mark) + 1 + _UNDER) * letters.text


def pill(mark: CardMark, letters: Letters) -> tuple[Block, float]:
    """The mark as a block, and its width in mm."""
    words, across = _widths(mark, letters)
    drawn = Late(partial(_drawn, mark, words, across, letters))
    return Block(_height(mark, letters), ((0.0, 0.0, drawn),)), across


def _widths(mark: CardMark, letters: Letters) -> tuple[float, float]:
    """Width in mm of the words, and of the whole mark."""
    words = width(mark.text, letters.text, heavy=True)
    return words, words + _SIDE * letters.text + 1.9 * letters.gap


def _drawn(mark: CardMark, words: float, across: float, letters: Letters) -> Block:
    height, side = _height(mark, letters), _SIDE * letters.text
    lines = ((Run(mark.text, bold=True),),)
    text = Text(0.0, 0.0, words, letters.text, letters.pitch, lines)
    edge = 0.07 * letters.text
    wide, high = across - 2 * edge, height - 2 * edge
    frame = Box(0.0, 0.0, wide, high, line=2 * edge, fill="white", radius=0.35 * letters.text)
    sign = Sign(0.0, 0.0, side, f"mark-{mark.kind}", mark.text)
    return Block(
        height,
        (
            (edge, edge, frame),
            (0.45 * letters.gap, (height - side) / 2, sign),
            (side + letters.gap, over(mark) * letters.text, text),
        ),
    )


def pills_width(marks: Sequence[CardMark], letters: Letters) -> float:
    """Width in mm of the marks side by side."""
    return sum(_widths(mark, letters)[1] + letters.gap for mark in marks) - letters.gap


def pill_rows(marks: Sequence[CardMark], room: float, letters: Letters) -> list[Block]:
    """The marks side by side as far as the room goes, then on a new row."""
    rows: list[list[tuple[Block, float]]] = []
    used = 0.0
    for mark in marks:
        block, across = pill(mark, letters)
        if not rows or used + across > room:
            rows.append([])
            used = 0.0
        rows[-1].append((block._replace(split=across > room), used))
        used += across + letters.gap
    gap = 0.5 * letters.gap
    return [abreast([block for block, _ in row], [x for _, x in row], gap=gap) for row in rows]
