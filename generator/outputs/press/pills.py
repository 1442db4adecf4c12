"""Framed marks for a state that must not be missed: a picture of its own and the words."""

from collections.abc import Sequence
from dataclasses import replace

from generator.outputs.press.blocks import Block, abreast
from generator.outputs.press.drawing import Box, Run, Sign, Text
from generator.outputs.press.letters import Letters
from generator.outputs.press.wrapping import width
from generator.views.card import CardMark

# Height of a mark in cap heights: behind a line of text it stays clear of what hangs from the line above.
PILL = 1.5


def pill(mark: CardMark, letters: Letters) -> tuple[Block, float]:
    """The mark as a block, and its width in mm."""
    height = PILL * letters.text
    side = 1.25 * letters.text
    words = width(mark.text, letters.text, heavy=True)
    across = words + side + 1.9 * letters.gap
    top = (height - letters.text) / 2
    lines = ((Run(mark.text, bold=True),),)
    text = Text(side + letters.gap, top, words, letters.text, letters.pitch, lines)
    edge = 0.07 * letters.text
    wide, high = across - 2 * edge, height - 2 * edge
    frame = Box(edge, edge, wide, high, line=2 * edge, fill="white", radius=0.35 * letters.text)
    sign = Sign(0.45 * letters.gap, (height - side) / 2, side, f"mark-{mark.kind}", mark.text)
    return Block(height, tuple((0.0, 0.0, mark) for mark in (frame, sign, text))), across


def pills_width(marks: Sequence[CardMark], letters: Letters) -> float:
    """Width in mm of the marks side by side."""
    return sum(pill(mark, letters)[1] + letters.gap for mark in marks) - letters.gap


def pill_rows(marks: Sequence[CardMark], room: float, letters: Letters) -> list[Block]:
    """The marks side by side as far as the room goes, then on a new row."""
    rows: list[list[tuple[Block, float]]] = []
    used = 0.0
    for mark in marks:
        block, across = pill(mark, letters)
        if not rows or used + across > room:
            rows.append([])
            used = 0.0
        rows[-1].append((replace(block, split=across > room), used))
        used += across + letters.gap
    gap = 0.5 * letters.gap
    return [abreast([block for block, _ in row], [x for _, x in row], gap=gap) for row in rows]
