"""Where a step is done: a station's number in a black disc, or a ring for a place without a number."""

from collections.abc import Sequence
from functools import partial
from typing import NamedTuple

from generator.outputs.press.blocks import Block, Late, Part, words_in
from generator.outputs.press.drawing import Box, Run
from generator.outputs.press.letters import DESCENT, Letters
from generator.outputs.press.pills import over, pill
from generator.outputs.press.wrapping import Paragraph, width, words_of
from generator.views.card import CardMark


def station(number: str, letters: Letters) -> tuple[Part, ...]:
    """The disc or the ring, in a square of one disc; a long number makes the disc a lozenge."""
    size = letters.disc
    if not number:
        ring = 0.62 * size
        edge = (size - ring) / 2
        rim = Box(0.0, 0.0, ring, ring, line=letters.bar, fill="white", radius=ring / 2)
        return ((letters.bar / 2, edge, rim),)
    cap, wide = _number_cap(number, letters), station_width(number, letters)
    text = words_in(words_of((Run(number, bold=True),)), wide, cap, align="center", ink="white")
    disc = Box(0.0, 0.0, wide, size, fill="black", radius=size / 2)
    return ((0.0, 0.0, disc), (0.0, (size - cap) / 2, text))


def _number_cap(number: str, letters: Letters) -> float:
    return letters.text * (1.2 if len(number) < 3 else 1.0)


def station_width(number: str, letters: Letters) -> float:
    """How far the disc or ring reaches to the right in mm."""
    if not number:
        return 0.62 * letters.disc + letters.bar
    return max(letters.disc, width(number, _number_cap(number, letters), heavy=True) + 2 * letters.gap)


class SetPlace(NamedTuple):
    """The head of a stay before it has a column: number and name of the place, how the part must arrive."""

    number: str
    name: Paragraph
    marks: tuple[CardMark, ...]


def set_place(number: str, title: str, marks: Sequence[CardMark] = ()) -> SetPlace:
    """All of it that hangs on no width."""
    return SetPlace(number, words_of((Run(title, bold=True),)), tuple(marks))


def place_head(
    place: SetPlace, left: float, room: float, letters: Letters, *, gap: float = 0.0, keep: bool = False
) -> Block:
    """A line of its own for a stay: disc, name of the place from `left` mm, how the part must arrive."""
    disc, cap = letters.disc, letters.place
    start = max(left, station_width(place.number, letters) + letters.gap)
    name = words_in(place.name, room - start, cap, role="heading")
    top = (disc - cap) / 2
    height = max(disc, top + name.height + DESCENT * cap)
    pills: list[Part] = []
    x, y = start + place.name.ends[-1] * cap + letters.space, 0.0
    for mark in place.marks:
        block, across = pill(mark, letters)
        if x + across > room:
            x, y = start, height + 0.4 * letters.gap
        pills.append((x, y or top + cap - (1 + over(mark)) * letters.text, block))
        height = max(height, y + block.height)
        x += across + letters.gap
    drawn = Late(partial(_drawn, place.number, (start, top, name), tuple(pills), height, letters))
    return Block(height, ((0.0, 0.0, drawn),), gap, keep, None, not name.found.whole)


def _drawn(number: str, name: Part, pills: tuple[Part, ...], height: float, letters: Letters) -> Block:
    line = Box(0.0, letters.disc / 2, letters.bar, height - letters.disc / 2, fill="black")
    return Block(height, ((0.0, 0.0, line), name, *station(number, letters), *pills))
