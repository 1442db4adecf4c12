"""Where a step is done: a station's number in a black disc, or a ring for a place without a number."""

from collections.abc import Sequence
from dataclasses import replace

from generator.outputs.press.blocks import Block, Part, paragraph, text_block
from generator.outputs.press.drawing import Box, Mark, Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.pills import pill
from generator.outputs.press.wrapping import run_width
from generator.views.card import CardMark


def station(number: str, letters: Letters) -> tuple[Mark, ...]:
    """The disc or the ring, in a square of one disc; a long number makes the disc a lozenge."""
    size = letters.disc
    if not number:
        ring = 0.62 * size
        edge = (size - ring) / 2
        return (Box(letters.bar / 2, edge, ring, ring, line=letters.bar, fill="white", radius=ring / 2),)
    cap = letters.text * (1.2 if len(number) < 3 else 1.0)
    runs = (Run(number, bold=True),)
    wide = max(size, run_width(runs, cap) + 2 * letters.gap)
    text = replace(paragraph(runs, wide, cap, align="center", ink="white"), y=(size - cap) / 2)
    return (Box(0.0, 0.0, wide, size, fill="black", radius=size / 2), text)


def station_width(number: str, letters: Letters) -> float:
    """How far the disc or ring reaches to the right in mm."""
    disc = station(number, letters)[0]
    return disc.width if isinstance(disc, Box) else letters.disc


def place_head(
    number: str, title: str, marks: Sequence[CardMark], left: float, room: float, letters: Letters
) -> Block:
    """A line of its own for a stay: disc, name of the place from `left` mm, how the part must arrive."""
    start = max(left, station_width(number, letters) + letters.gap)
    runs = (Run(title, bold=True),)
    name = text_block(runs, room - start, letters.place, role="heading")
    top = (letters.disc - letters.place) / 2
    height = max(letters.disc, top + name.height)
    parts: list[Part] = [(start, top, name), *((0.0, 0.0, mark) for mark in station(number, letters))]
    x, y = start + run_width(runs, letters.place) + letters.space, 0.0
    for mark in marks:
        block, across = pill(mark, letters)
        if x + across > room:
            x, y = start, height + 0.4 * letters.gap
        parts.append((x, y or (letters.disc - block.height) / 2, block))
        height = max(height, y + block.height)
        x += across + letters.gap
    line = Box(0.0, letters.disc / 2, letters.bar, height - letters.disc / 2, fill="black")
    return Block(height, ((0.0, 0.0, line), *parts), split=name.split)
