"""Packs signs with their words into rows: even columns where that is no higher, else side by side."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from generator.outputs.press.blocks import Block, abreast, shifted, stacked, text_block
from generator.outputs.press.drawing import Run, Sign
from generator.outputs.press.letters import DESCENT, Letters
from generator.outputs.press.wrapping import broken, run_width

_MOST_COLUMNS = 6


@dataclass(frozen=True, slots=True)
class Item:
    """A sign and the words beside it."""

    sign: Sign
    runs: tuple[Run, ...]


def packed(items: Sequence[Item], room: float, letters: Letters) -> Block:
    """The lowest of the ways to set the items; even columns win a tie."""
    ways = [_even(items, room, letters, columns) for columns in range(1, min(_MOST_COLUMNS, len(items)) + 1)]
    ways += [_natural(items, room, letters, lines) for lines in (1, 2, 3)]
    return min(ways, key=lambda way: (way.split, round(way.height, 3)))


def _even(items: Sequence[Item], room: float, letters: Letters, columns: int) -> Block:
    step = (room + letters.space) / columns
    words = step - letters.space - letters.sign - letters.gap
    cells = [_cell(item, max(words, letters.text), letters) for item in items]
    rows = [
        abreast(row, [n * step for n in range(len(row))], gap=letters.gap)
        for row in (cells[start : start + columns] for start in range(0, len(cells), columns))
    ]
    return stacked(rows)


def _natural(items: Sequence[Item], room: float, letters: Letters, lines: int) -> Block:
    """Each item as wide as its words in so many lines; rows are filled in order."""
    most = room - letters.sign - letters.gap
    rows: list[list[tuple[Block, float]]] = [[]]
    used = 0.0
    for item in items:
        words = _narrowest(item.runs, most, letters, lines)
        across = letters.sign + letters.gap + words
        if rows[-1] and used + across > room:
            rows.append([])
            used = 0.0
        rows[-1].append((_cell(item, words, letters), used))
        used += across + letters.space
    return stacked([abreast([b for b, _ in row], [x for _, x in row], gap=letters.gap) for row in rows])


def _narrowest(runs: Sequence[Run], most: float, letters: Letters, lines: int) -> float:
    """The least room, up to `most` mm, in which the words take so many lines (or as many as at `most`)."""
    lines = max(lines, len(broken(runs, (most,), letters.text)))
    low = min(most, run_width(runs, letters.text) / lines)
    step = 0.5 * letters.text
    while low < most and len(broken(runs, (low,), letters.text)) > lines:
        low += step
    return min(most, low)


def _cell(item: Item, words: float, letters: Letters) -> Block:
    """A sign with its words beside it, both centred on one line."""
    text = text_block(item.runs, words, letters.text)
    ink = text.height - DESCENT * letters.text
    height = max(letters.sign, ink)
    sign = replace(item.sign, y=(height - letters.sign) / 2)
    body = shifted(text, letters.sign + letters.gap, (height - ink) / 2)
    return Block(height, (sign, *body.marks), split=text.split)
