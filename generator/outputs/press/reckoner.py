"""The ready-reckoner: a table of finished values, for a laminated card cannot compute."""

from collections.abc import Sequence

from generator.outputs.press.blocks import Block, paragraph, stacked, text_block
from generator.outputs.press.drawing import Grid, Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.wrapping import whole, width
from generator.views.card import CardTable


def reckoner(table: CardTable, room: float, letters: Letters) -> Block:
    """Title, grid and note; a grid wider than the room is cut into bands that repeat the first column."""
    title = text_block((Run(table.title, bold=True),), room, letters.place, role="heading")
    bands = [_grid(table, columns, room, letters) for columns in _bands(table, room, letters)]
    note = [text_block((Run(table.note),), room, letters.text, gap=letters.gap)] if table.note else []
    return stacked((title, *bands, *note), gap=letters.space)


def _wants(table: CardTable, column: int, letters: Letters, *, whole_head: bool = False) -> float:
    """Width that a column wants: its widest value, and the widest word of its head, or its whole head."""
    words = [table.heads[column]] if whole_head else table.heads[column].split(" ")
    values = [row[column] for row in table.rows]
    widest = max(
        *(width(word, letters.text, heavy=True) for word in words),
        *(width(value, letters.text, heavy=True) for value in values),
    )
    return widest + 2 * letters.gap


def _bands(table: CardTable, room: float, letters: Letters) -> list[tuple[int, ...]]:
    first = _wants(table, 0, letters)
    bands: list[tuple[int, ...]] = [(0,)]
    used = first
    for column in range(1, len(table.heads)):
        wide = _wants(table, column, letters)
        if used + wide > room and len(bands[-1]) > 1:
            bands.append((0,))
            used = first
        bands[-1] = (*bands[-1], column)
        used += wide
    return bands


def _grid(table: CardTable, columns: Sequence[int], room: float, letters: Letters) -> Block:
    wants = [_wants(table, column, letters, whole_head=True) for column in columns]
    if sum(wants) > room:
        wants = [_wants(table, column, letters) for column in columns]
    # A narrow table is let out a little, so that its rows are easy to follow, never over the whole width.
    stretch = min(1.6, max(1.0, room / sum(wants)))
    widths = tuple(want * stretch for want in wants)
    heads = [
        paragraph((Run(table.heads[column], bold=True),), wide - letters.gap, letters.text)
        for column, wide in zip(columns, widths, strict=True)
    ]
    head_rows = tuple("\n".join("".join(run.text for run in line) for line in head.lines) for head in heads)
    pad = 1.2 * letters.gap
    head_height = max(head.height for head in heads) + pad
    row = letters.text + pad
    rows = (head_rows, *(tuple(values[column] for column in columns) for values in table.rows))
    grid = Grid(
        0.0, 0.0, widths, head_height, row, letters.text, letters.pitch, letters.hair * 2, rows, table.title
    )
    fits = sum(wants) <= room and all(
        whole((Run(table.heads[c], bold=True),), w - letters.gap, letters.text)
        for c, w in zip(columns, widths, strict=True)
    )
    return Block(head_height + row * len(table.rows), ((0.0, 0.0, grid),), letters.gap, split=not fits)
