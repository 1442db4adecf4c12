"""Pieces of a card that are set one under the other: unbreakable, with a height and marks of their own."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

from generator.outputs.press.drawing import Ink, Mark, Role, Run, Text, moved
from generator.outputs.press.letters import DESCENT, PITCH
from generator.outputs.press.wrapping import broken, whole


@dataclass(frozen=True, slots=True)
class Block:
    """`height` mm of a column; `gap` mm of white above it, dropped at the top of a column.

    `keep` holds it together with the next block; `again` is set first when a column starts with this
    block; `split` says that a word had to be broken between letters. `tie` is the thickness of a line at
    the left that joins the block to the one above, 0 for none.
    """

    height: float
    marks: tuple[Mark, ...]
    gap: float = 0.0
    keep: bool = False
    again: "Block | None" = None
    split: bool = False
    tie: float = 0.0


def paragraph(
    runs: Sequence[Run],
    rooms: float | tuple[float, ...],
    cap: float,
    *,
    role: Role = "text",
    align: Literal["left", "center", "right"] = "left",
    ink: Ink = "black",
) -> Text:
    """Runs broken into lines, at the origin; `rooms` gives the room of each line, the last one goes on."""
    each = rooms if isinstance(rooms, tuple) else (rooms,)
    return Text(0.0, 0.0, max(each), cap, PITCH * cap, broken(runs, each, cap), role, align, ink)


def text_block(
    runs: Sequence[Run],
    rooms: float | tuple[float, ...],
    cap: float,
    *,
    gap: float = 0.0,
    role: Role = "text",
    align: Literal["left", "center", "right"] = "left",
    ink: Ink = "black",
) -> Block:
    """A paragraph as a block, with room for what hangs under its last line."""
    text = paragraph(runs, rooms, cap, role=role, align=align, ink=ink)
    least = min(rooms) if isinstance(rooms, tuple) else rooms
    return Block(text.height + DESCENT * cap, (text,), gap, split=not whole(runs, least, cap))


def stacked(blocks: Sequence[Block], *, gap: float = 0.0) -> Block:
    """Blocks one under the other as one block with `gap` above it."""
    marks: list[Mark] = []
    y = 0.0
    for number, block in enumerate(blocks):
        y += block.gap if number else 0.0
        marks.extend(moved(mark, 0.0, y) for mark in block.marks)
        y += block.height
    return Block(y, tuple(marks), gap, split=any(block.split for block in blocks))


def shifted(block: Block, dx: float, dy: float = 0.0) -> Block:
    """The same block with its marks moved; its height grows by `dy`."""
    marks = tuple(moved(mark, dx, dy) for mark in block.marks)
    return replace(block, height=block.height + dy, marks=marks)


def abreast(blocks: Sequence[Block], lefts: Sequence[float], *, gap: float = 0.0) -> Block:
    """Blocks with their tops level, at the given left edges."""
    marks = tuple(
        mark for block, left in zip(blocks, lefts, strict=True) for mark in shifted(block, left).marks
    )
    height = max(block.height for block in blocks)
    return Block(height, marks, gap, split=any(block.split for block in blocks))
