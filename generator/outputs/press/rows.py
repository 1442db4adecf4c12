"""One step as a row: number, sentence with what belongs to it, marks; its times large at the right."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import NamedTuple

from generator.outputs.press.blocks import Block, Late, Part, Words
from generator.outputs.press.drawing import Run
from generator.outputs.press.letters import DESCENT, PITCH, Letters
from generator.outputs.press.pills import low, over, pill_rows, pills_width
from generator.outputs.press.wrapping import Cut, Paragraph, cut_words, last_width, words_of
from generator.views.card import CardMark, CardStep

# How far a mark behind a line hangs lower than it, in cap heights: clear of what hangs from the line above.
_LOWER = 0.14
# White between two paragraphs, and between a time and its window, in cap heights.
_CAPS = Letters(1.0)
_BETWEEN, _UNDER = 0.35 * _CAPS.gap, 0.4 * _CAPS.gap
# Times take no more of the column than this, and a hundredth of a millimetre more than their letters.
_MOST, _SPARE = 0.42, 0.01


@dataclass(frozen=True, slots=True)
class Columns:
    """Inside the column of steps, in mm: its room, left edge of numbers, left edge of sentences."""

    room: float
    number: float
    sentence: float


class Row(NamedTuple):
    """A step before it has a column: its number, paragraphs, times and marks.

    Each of `times` stands with the height of its capitals; `wide` and `tall` are what they take when each
    keeps to one line; all in cap heights of a sentence. With `beside` its marks stand behind the last line
    where there is room for them.
    """

    number: Paragraph
    says: tuple[Paragraph, ...]
    times: tuple[tuple[Paragraph, float], ...]
    wide: float
    tall: float
    marks: tuple[CardMark, ...]
    beside: bool


class _Says(NamedTuple):
    """Paragraphs cut into lines: their length in mm, and whether all words stay whole."""

    height: float
    whole: bool
    cuts: tuple[Cut, ...]


_Pills = tuple[tuple[float, float, Block], ...]
_NONE: _Pills = ()


def row_of(
    step: CardStep, parts: Sequence[tuple[Run, ...]], marks: Sequence[CardMark], *, beside: bool
) -> Row:
    """All of a step that hangs on no width."""
    large, small = Run(solid(step.dwell_shown or step.amount_shown), bold=True), Run(step.window_shown)
    each = ((large, _CAPS.dwell), (small, _CAPS.text))
    times = tuple((words_of((run,)), cap) for run, cap in each if run.text)
    return Row(
        words_of((Run(step.number, bold=True),)),
        tuple(map(words_of, parts)),
        times,
        max((words.ends[-1] * cap for words, cap in times), default=0.0),
        sum(cap + DESCENT for _, cap in times) + _UNDER * max(len(times) - 1, 0),
        tuple(marks),
        beside,
    )


def step_row(
    row: Row,
    columns: Columns,
    letters: Letters,
    *,
    gap: float = 0.0,
    again: Callable[[], Block] | None = None,
    tie: float = 0.0,
) -> Block:
    """The row in its column: measured now, drawn when it is printed."""
    cap = letters.text
    time, tall, kept = row.wide * cap + _SPARE, row.tall * cap, True
    if time > _MOST * columns.room:
        time = _MOST * columns.room
        tall, kept = _below(_times(row, time, cap), cap)
    says = _says(row, columns, cap, time, tall)
    height, pills = says.height, _NONE
    if row.marks:
        height, pills = _marked(row, says, columns, letters, time if tall else 0.0)
    drawn = Late(partial(_drawn, row, columns, cap, says, pills, time))
    split = not (says.whole and kept) or any(block.split for _, _, block in pills)
    return Block(max(height, tall), ((0.0, 0.0, drawn),), gap, False, again, split, tie)


def _drawn(row: Row, columns: Columns, cap: float, says: _Says, pills: _Pills, time: float) -> Block:
    """Number, sentences, marks, times, in the order in which they are read."""
    full = columns.room - columns.sentence
    number = Words(cut_words(row.number, (columns.room / cap,)), columns.room, cap)
    parts: list[Part] = [(columns.number, 0.0, number)]
    y = 0.0
    for found in says.cuts:
        text = Words(found, full, cap)
        parts.append((columns.sentence, y, text))
        y += text.height + (DESCENT + _BETWEEN) * cap
    parts += [(columns.sentence + left, down, block) for left, down, block in pills]
    parts += [(columns.room - time, down, text) for down, text in _times(row, time, cap)]
    return Block(0.0, tuple(parts))


def _marked(row: Row, says: _Says, columns: Columns, letters: Letters, time: float) -> tuple[float, _Pills]:
    """Length of the sentences with their marks, and the marks: under them, or behind the last line."""
    full, cap = columns.room - columns.sentence, letters.text
    rows = pill_rows(row.marks, full, letters)
    if row.beside and says.cuts and len(rows) == 1 and low(row.marks):
        left = last_width(says.cuts[-1]) * cap + letters.space
        # Beside the times a line is short; so is whatever follows on it.
        room = full - (time + letters.space if time else 0.0)
        if left + pills_width(row.marks, letters) <= room:
            top = says.height - (DESCENT + 1 + over(row.marks[0]) - _LOWER) * cap
            return max(says.height, top + rows[0].height), ((left, top, rows[0]),)
    placed, y = [], says.height
    for block in rows:
        placed.append((0.0, y + block.gap, block))
        y += block.gap + block.height
    return y, tuple(placed)


def _says(row: Row, columns: Columns, cap: float, time: float, beside: float) -> _Says:
    """Paragraphs; lines beside the times are short, those under them run on to the edge."""
    full = (columns.room - columns.sentence) / cap
    # Here all is in cap heights.
    short, beside = full - time / cap - _CAPS.space, beside / cap
    cuts: list[Cut] = []
    y, whole = 0.0, True
    for words in row.says:
        y += _BETWEEN if cuts else 0.0
        lines = int((beside - y) / PITCH + 0.98) if beside > y else 0
        found = cut_words(words, (*(short,) * lines, full))
        cuts.append(found)
        y += 1 + (len(found.cuts) - 1) * PITCH + DESCENT
        whole = whole and found.whole
    return _Says(y * cap, whole, tuple(cuts))


def _times(row: Row, room: float, cap: float) -> list[tuple[float, Words]]:
    """The times at the right edge of `room` mm, each with how far down it stands in mm."""
    texts: list[tuple[float, Words]] = []
    y = 0.0
    for words, caps in row.times:
        text = Words(cut_words(words, (room / (caps * cap),)), room, caps * cap, align="right")
        texts.append((y, text))
        y += text.height + (DESCENT + _UNDER) * cap
    return texts


def _below(texts: Sequence[tuple[float, Words]], cap: float) -> tuple[float, bool]:
    """How far down the times reach in mm, and whether all their words stay whole."""
    down, last = texts[-1]
    return down + last.height + DESCENT * cap, all(text.found.whole for _, text in texts)


def solid(text: str) -> str:
    """A time is never parted from its unit, nor a label from itself."""
    return text.replace(" ", "\u00a0")
