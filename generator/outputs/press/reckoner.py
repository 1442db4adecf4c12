"""The ready-reckoner: a table of finished values, for a laminated card cannot compute."""

from collections.abc import Sequence
from functools import partial
from typing import NamedTuple

from generator.outputs.press.blocks import Block, Late, Words, stacked, words_block, words_in
from generator.outputs.press.drawing import Grid, Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.wrapping import Paragraph, width, words_of
from generator.views.card import CardTable

# White on both sides of a value in cap heights.
_SIDES = 2 * Letters(1.0).gap


class SetTable(NamedTuple):
    """A table before it has a column: its words, and the widths that its columns want in cap heights.

    `narrow` is for heads of one word a line, `wide` for heads in one line.
    """

    table: CardTable
    title: Paragraph
    heads: tuple[Paragraph, ...]
    note: Paragraph | None
    narrow: tuple[float, ...]
    wide: tuple[float, ...]


def set_table(table: CardTable) -> SetTable:
    """All of a table that hangs on no width."""
    columns = [_widest(column) for column in zip(*table.rows, strict=True)] or [0.0] * len(table.heads)
    each = tuple(zip(table.heads, columns, strict=True))
    return SetTable(
        table,
        words_of((Run(table.title, bold=True),)),
        tuple(words_of((Run(head, bold=True),)) for head in table.heads),
        words_of((Run(table.note),)) if table.note else None,
        tuple(max(values, _widest(head.split(" "))) + _SIDES for head, values in each),
        tuple(max(values, _widest([head])) + _SIDES for head, values in each),
    )


def _widest(texts: Sequence[str]) -> float:
    return max(width(text, 1.0, heavy=True) for text in texts)


def reckoner(made: SetTable, room: float, letters: Letters) -> Block:
    """Title, grid and note; a grid wider than the room is cut into bands that repeat the first column."""
    title = words_block(made.title, room, letters.place, role="heading")
    bands = [_grid(made, columns, room, letters) for columns in _bands(made, room / letters.text)]
    note = [words_block(made.note, room, letters.text, gap=letters.gap)] if made.note else []
    return stacked((title, *bands, *note), gap=letters.space)


def _bands(made: SetTable, room: float) -> list[tuple[int, ...]]:
    """The columns of each band; `room` in cap heights."""
    first, *others = made.narrow
    bands: list[tuple[int, ...]] = [(0,)]
    used = first
    for column, wide in enumerate(others, start=1):
        if used + wide > room and len(bands[-1]) > 1:
            bands.append((0,))
            used = first
        bands[-1] = (*bands[-1], column)
        used += wide
    return bands


def _grid(made: SetTable, columns: Sequence[int], room: float, letters: Letters) -> Block:
    cap = letters.text
    wants = [made.wide[column] * cap for column in columns]
    if sum(wants) > room:
        wants = [made.narrow[column] * cap for column in columns]
    # A narrow table is let out a little, so that its rows are easy to follow, never over the whole width.
    stretch = min(1.6, max(1.0, room / sum(wants)))
    widths = tuple(want * stretch for want in wants)
    heads = tuple(
        words_in(made.heads[column], wide - letters.gap, cap)
        for column, wide in zip(columns, widths, strict=True)
    )
    pad = 1.2 * letters.gap
    head, row = max(head.height for head in heads) + pad, cap + pad
    drawn = Late(partial(_drawn, made.table, columns, widths, heads, (head, row), letters))
    fits = sum(wants) <= room and all(head.found.whole for head in heads)
    return Block(head + row * len(made.table.rows), ((0.0, 0.0, drawn),), letters.gap, split=not fits)


def _drawn(
    table: CardTable, columns: Sequence[int], widths: tuple[float, ...], heads: Sequence[Words],
    heights: tuple[float, float], letters: Letters,
) -> Block:  # fmt: skip
    """The grid itself, with the heights in mm of its heads and of a row."""
    told = tuple("\n".join("".join(run.text for run in line) for line in head.lines) for head in heads)
    rows = (told, *(tuple(values[column] for column in columns) for values in table.rows))
    look = letters.text, letters.pitch, letters.hair * 2
    return Block(0.0, ((0.0, 0.0, Grid(0.0, 0.0, widths, *heights, *look, rows, table.title)),))
