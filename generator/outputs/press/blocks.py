"""Pieces of a card that are set one under the other: unbreakable, with a height and parts of their own."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

from generator.outputs.press.drawing import Ink, Mark, Role, Run, Text, moved
from generator.outputs.press.letters import DESCENT, PITCH
from generator.outputs.press.wrapping import broken, whole

Part = tuple[float, float, "Mark | Block"]
Align = Literal["left", "center", "right"]


@dataclass(frozen=True, slots=True)
class Block:
    """`height` mm of a column, drawn from parts placed by (right, down) in mm, in reading order.

    `gap` is the white above it, dropped at the top of a column. `keep` holds it together with the next
    block; `again` is set first when a column starts with this block; `split` says that a word had to be
    broken between letters. `tie` is the thickness of a line at the left that joins the block to the one
    above, 0 for none.
    """

    height: float
    parts: tuple[Part, ...]
    gap: float = 0.0
    keep: bool = False
    again: "Block | None" = None
    split: bool = False
    tie: float = 0.0


def marks_of(block: Block, x: float, y: float) -> Iterator[Mark]:
    """All marks of a block whose top left corner stands at x, y."""
    for right, down, part in block.parts:
        if isinstance(part, Block):
            yield from marks_of(part, x + right, y + down)
        else:
            yield moved(part, x + right, y + down)


def paragraph(
    runs: Sequence[Run],
    rooms: float | tuple[float, ...],
    cap: float,
    *,
    role: Role = "text",
    align: Align = "left",
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
    ink: Ink = "black",
) -> Block:
    """A paragraph as a block, with room for what hangs under its last line."""
    text = paragraph(runs, rooms, cap, role=role, ink=ink)
    least = min(rooms) if isinstance(rooms, tuple) else rooms
    fits = whole(runs, least, cap)
    return Block(text.height + DESCENT * cap, ((0.0, 0.0, text),), gap, split=not fits)


def stacked(blocks: Sequence[Block], *, gap: float = 0.0) -> Block:
    """Blocks one under the other as one block with `gap` above it."""
    parts: list[Part] = []
    y = 0.0
    for number, block in enumerate(blocks):
        y += block.gap if number else 0.0
        parts.append((0.0, y, block))
        y += block.height
    return Block(y, tuple(parts), gap, split=any(block.split for block in blocks))


def abreast(blocks: Sequence[Block], lefts: Sequence[float], *, gap: float = 0.0) -> Block:
    """Blocks with their tops level, at the given left edges."""
    parts = tuple((left, 0.0, block) for block, left in zip(blocks, lefts, strict=True))
    height = max(block.height for block in blocks)
    return Block(height, parts, gap, split=any(block.split for block in blocks))


def wider(blocks: Sequence[Block], factor: float) -> tuple[Block, ...]:
    """The same blocks with the white above them grown by `factor`."""
    return tuple(replace(block, gap=block.gap * factor) for block in blocks)
