"""Packs signs with their words into rows: even columns where that is no higher, else side by side."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import NamedTuple

from generator.outputs.press.blocks import Block, abreast, stacked, text_block
from generator.outputs.press.drawing import Run, Sign
from generator.outputs.press.letters import DESCENT, PITCH, Letters
from generator.outputs.press.wrapping import line_count, run_width, whole

_MOST_COLUMNS = 6


class Item(NamedTuple):
    """A sign and the words beside it."""

    sign: Sign
    runs: tuple[Run, ...]


class _Cell(NamedTuple):
    """An item with its left edge, the room of its words, and its height, in mm."""

    item: Item
    left: float
    words: float
    height: float


_Rows = list[list[_Cell]]


def packed(items: Sequence[Item], room: float, letters: Letters) -> Block:
    """The lowest of the ways to set the items; even columns win a tie."""
    rows = min(_ways(items, room, letters), key=lambda rows: round(_height(rows, letters), 3))
    built = [
        abreast([_cell(cell, letters) for cell in row], [cell.left for cell in row], gap=letters.gap)
        for row in rows
    ]
    return stacked(built)


def _ways(items: Sequence[Item], room: float, letters: Letters) -> Iterator[_Rows]:
    one = _even(items, room, letters, 1)
    yield one or [[_measured(item, 0.0, letters.sign, letters)] for item in items]
    for columns in range(2, min(_MOST_COLUMNS, len(items)) + 1):
        rows = _even(items, room, letters, columns)
        if rows is None:
            break
        yield rows
    for lines in (1, 2, 3):
        yield _natural(items, room, letters, lines)


def _height(rows: _Rows, letters: Letters) -> float:
    return sum(max(cell.height for cell in row) for row in rows) + letters.gap * (len(rows) - 1)


def _even(items: Sequence[Item], room: float, letters: Letters, columns: int) -> _Rows | None:
    """Rows of so many equal columns, or None where a word would have to be broken."""
    step = (room + letters.space) / columns
    words = step - letters.space - letters.sign - letters.gap
    if not all(whole(item.runs, words, letters.text) for item in items):
        return None
    cells = [_measured(item, n % columns * step, words, letters) for n, item in enumerate(items)]
    return [cells[start : start + columns] for start in range(0, len(cells), columns)]


def _natural(items: Sequence[Item], room: float, letters: Letters, lines: int) -> _Rows:
    """Each item as wide as its words in so many lines; rows are filled in order."""
    most = max(room - letters.sign - letters.gap, letters.sign)
    rows: _Rows = [[]]
    used = 0.0
    for item in items:
        words = _narrowest(item.runs, most, letters, lines)
        across = letters.sign + letters.gap + words
        if rows[-1] and used + across > room:
            rows.append([])
            used = 0.0
        rows[-1].append(_measured(item, used, words, letters))
        used += across + letters.space
    return rows


def _narrowest(runs: Sequence[Run], most: float, letters: Letters, lines: int) -> float:
    """The least room, up to `most` mm, in which the words take so many lines (or as many as at `most`)."""
    while True:
        room = _room_for(tuple(runs), lines) * letters.text
        if room <= most or lines >= line_count(runs, most, letters.text):
            return min(most, room)
        lines += 1


@lru_cache(maxsize=2_000)
def _room_for(runs: tuple[Run, ...], lines: int) -> float:
    """The least room in cap heights, to half a cap height, in which the words take so many lines."""
    room = run_width(runs, 1.0) / lines
    while line_count(runs, room, 1.0) > lines or not whole(runs, room, 1.0):
        room += 0.5
    return room


def _measured(item: Item, left: float, words: float, letters: Letters) -> _Cell:
    lines = line_count(item.runs, words, letters.text)
    ink = letters.text * (1 + (lines - 1) * PITCH)
    # Words higher than their sign keep clear of those above and below, or they would read as one.
    return _Cell(item, left, words, max(letters.sign, ink + letters.gap if lines > 2 else 0.0))


def _cell(cell: _Cell, letters: Letters) -> Block:
    """A sign with its words beside it, both centred on one line."""
    text = text_block(cell.item.runs, cell.words, letters.text)
    ink = text.height - DESCENT * letters.text
    sign = (0.0, (cell.height - letters.sign) / 2, cell.item.sign)
    words = (letters.sign + letters.gap, (cell.height - ink) / 2, text)
    return Block(cell.height, (sign, words), split=text.split)
