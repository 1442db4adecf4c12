"""Pieces of a card that are set one under the other: unbreakable, with a height and parts of their own."""

from collections.abc import Callable, Iterator, Sequence
from typing import Literal, NamedTuple

from generator.outputs.press.drawing import Ink, Line, Mark, Role, Run, Text, moved
from generator.outputs.press.letters import DESCENT, PITCH
from generator.outputs.press.wrapping import Cut, Paragraph, cut_words, joined, last_width, words_of

Part = tuple[float, float, "Mark | Words | Late | Block"]
Align = Literal["left", "center", "right"]


class Words(NamedTuple):
    """A text whose lines are known but not yet made: most texts are measured many times and drawn once."""

    found: Cut
    width: float
    cap: float
    role: Role = "text"
    align: Align = "left"
    ink: Ink = "black"

    @property
    def height(self) -> float:
        """From the top of the first capitals to the last base line, in mm."""
        return self.cap * (1 + (len(self.found.cuts) - 1) * PITCH)

    @property
    def last(self) -> float:
        """Width of the last line in mm."""
        return last_width(self.found) * self.cap

    @property
    def lines(self) -> tuple[Line, ...]:
        """The lines themselves."""
        return joined(self.found.laid, self.found.cuts)

    def at(self, x: float, y: float) -> Text:
        """The text, its first capitals at x, y."""
        pitch = PITCH * self.cap
        return Text(x, y, self.width, self.cap, pitch, self.lines, self.role, self.align, self.ink)


class Late(NamedTuple):
    """A part of which only the size is known; it is made when it is drawn."""

    make: Callable[[], "Block"]


class Block(NamedTuple):
    """`height` mm of a column, drawn from parts placed by (right, down) in mm, in reading order.

    `gap` is the white above it, dropped at the top of a column. `keep` holds it together with the next
    block; `again` makes what is set first when a column starts with this block; `split` says that a word
    had to be broken between letters. `tie` is the thickness of a line at the left that joins the block to
    the one above, 0 for none.
    """

    height: float
    parts: tuple[Part, ...]
    gap: float = 0.0
    keep: bool = False
    again: "Callable[[], Block] | None" = None
    split: bool = False
    tie: float = 0.0


def marks_of(block: Block, x: float, y: float) -> Iterator[Mark]:
    """All marks of a block whose top left corner stands at x, y."""
    for right, down, part in block.parts:
        if isinstance(part, Block):
            yield from marks_of(part, x + right, y + down)
        elif isinstance(part, Words):
            yield part.at(x + right, y + down)
        elif isinstance(part, Late):
            yield from marks_of(part.make(), x + right, y + down)
        else:
            yield moved(part, x + right, y + down)


def words_in(
    laid: Paragraph,
    rooms: float | tuple[float, ...],
    cap: float,
    *,
    role: Role = "text",
    align: Align = "left",
    ink: Ink = "black",
) -> Words:
    """Measured words cut into lines; `rooms` gives the room of each line in mm, the last one goes on."""
    if isinstance(rooms, tuple):
        return Words(cut_words(laid, [room / cap for room in rooms]), max(rooms), cap, role, align, ink)
    return Words(cut_words(laid, (rooms / cap,)), rooms, cap, role, align, ink)


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
    return words_block(words_of(tuple(runs)), rooms, cap, gap=gap, role=role, ink=ink)


def words_block(
    laid: Paragraph,
    rooms: float | tuple[float, ...],
    cap: float,
    *,
    gap: float = 0.0,
    role: Role = "text",
    ink: Ink = "black",
) -> Block:
    """The same for words that were measured before."""
    text = words_in(laid, rooms, cap, role=role, ink=ink)
    return Block(text.height + DESCENT * cap, ((0.0, 0.0, text),), gap, split=not text.found.whole)


def stacked(blocks: Sequence[Block], *, gap: float = 0.0) -> Block:
    """Blocks one under the other as one block with `gap` above it."""
    parts: list[Part] = []
    y, split = 0.0, False
    for number, block in enumerate(blocks):
        y += block.gap if number else 0.0
        parts.append((0.0, y, block))
        y += block.height
        split = split or block.split
    return Block(y, tuple(parts), gap, split=split)


def abreast(blocks: Sequence[Block], lefts: Sequence[float], *, gap: float = 0.0) -> Block:
    """Blocks with their tops level, at the given left edges."""
    parts = tuple((left, 0.0, block) for block, left in zip(blocks, lefts, strict=True))
    height = max(block.height for block in blocks)
    return Block(height, parts, gap, split=any(block.split for block in blocks))
