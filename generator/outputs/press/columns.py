"""Sets blocks into columns: in order, unbroken, heads with what follows them."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from generator.outputs.press.blocks import Block

_CLOSE = 1e-6


class Placed(NamedTuple):
    """A block, the number of its column, its top in mm from the top of the column, the white above it."""

    block: Block
    column: int
    y: float
    gap: float


@dataclass(frozen=True, slots=True)
class Flow:
    """Blocks in their columns, and the length of the longest column in mm."""

    placed: tuple[Placed, ...]
    length: float


def flow(blocks: Sequence[Block], height: float, count: int, white: float = 1.0) -> Flow | None:
    """The blocks in at most `count` columns of `height` mm, or None when they do not go in.

    The white between blocks is `white` times as high as they ask for.
    """
    placed: list[Placed] = []
    column, y, length = 0, 0.0, 0.0
    for number, block in enumerate(blocks):
        top = y + (block.gap * white if y else 0.0)
        if top + _held(blocks, number, white) > height + _CLOSE and y:
            column, y = column + 1, 0.0
            if column >= count:
                return None
            if block.again is not None and not blocks[number - 1].keep:
                again = block.again()
                placed.append(Placed(again, column, 0.0, 0.0))
                y = again.height
            top = y + (block.gap * white if y else 0.0)
        if top + block.height > height + _CLOSE:
            return None
        placed.append(Placed(block, column, top, top - y))
        y = top + block.height
        length = max(length, y)
    return Flow(tuple(placed), length)


def goes_in(blocks: Sequence[Block], height: float, count: int, white: float = 1.0) -> bool:
    """Whether the blocks have room in so many columns; for one column their sum tells."""
    if count > 1:
        return flow(blocks, height, count, white) is not None
    return stack_length(blocks, white) <= height + _CLOSE


def _held(blocks: Sequence[Block], number: int, white: float) -> float:
    """Height of a block together with those it must not be parted from."""
    total = blocks[number].height
    while blocks[number].keep and number + 1 < len(blocks):
        number += 1
        total += blocks[number].gap * white + blocks[number].height
    return total


def level(blocks: Sequence[Block], height: float, count: int, white: float = 1.0) -> Flow | None:
    """The flow whose longest column is as short as can be, so that the columns end together."""
    best = flow(blocks, height, count, white)
    if best is None or count == 1:
        return best
    low, high = total(blocks, white) / count * 0.8, best.length
    for _ in range(9):
        middle = (low + high) / 2
        found = flow(blocks, middle, count, white)
        if found is None:
            low = middle
        else:
            best, high = found, min(middle, found.length)
    return best


def total(blocks: Sequence[Block], white: float = 1.0) -> float:
    """Length of all blocks under one another in mm, with the white above the first."""
    return sum([block.gap * white + block.height for block in blocks])


def stack_length(blocks: Sequence[Block], white: float = 1.0) -> float:
    """The same from the top of the first block, as in a column."""
    return total(blocks, white) - (blocks[0].gap * white if blocks else 0.0)
