"""One step as a row: number, sentence with what belongs to it, marks; its times large at the right."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from typing import NamedTuple

from generator.outputs.press.blocks import Block, Late, Part, Words
from generator.outputs.press.drawing import Run
from generator.outputs.press.letters import DESCENT, PITCH, Letters
from generator.outputs.press.pills import low, over, pill_rows, pills_width
from generator.outputs.press.wrapping import Cut, Paragraph, cut_words, last_width, width, words_of
from generator.views.card import CardMark, CardStep

# How far a mark behind a line hangs lower than it, in cap heights: clear of what hangs from the line above.
_LOWER = 0.14


@dataclass(frozen=True, slots=True)
class Columns:
    """Inside the column of steps, in mm: its room, left edge of numbers, left edge of sentences."""

    room: float
    number: float
    sentence: float


class Row(NamedTuple):
    """A step before it has a column: its number, paragraphs, times and marks.

    `large` and `small` are times with their widths in cap heights of their own. With `beside` its marks
    stand behind the last line where there is room for them.
    """

    number: Paragraph
    says: tuple[Paragraph, ...]
    large: tuple[Paragraph, float] | None
    small: tuple[Paragraph, float] | None
    marks: tuple[CardMark, ...]
    beside: bool


class _Text(NamedTuple):
    """Lines of a text, how far down they start in mm, height of its capitals in mm."""

    down: float
    cap: float
    found: Cut

    @property
    def height(self) -> float:
        return self.cap * (1 + (len(self.found.cuts) - 1) * PITCH)


class _Texts(NamedTuple):
    """Texts under one another: their length in mm, and whether all words stay whole."""

    height: float
    whole: bool
    texts: tuple[_Text, ...]


_Pills = tuple[tuple[float, float, Block], ...]


def row_of(
    step: CardStep, parts: Sequence[tuple[Run, ...]], marks: Sequence[CardMark], *, beside: bool
) -> Row:
    """All of a step that hangs on no width."""
    large, small = step.dwell_shown or step.amount_shown, step.window_shown
    return Row(
        words_of((Run(step.number, bold=True),)),
        tuple(map(words_of, parts)),
        (words_of((Run(solid(large), bold=True),)), width(large, 1.0, heavy=True)) if large else None,
        (words_of((Run(small),)), width(small, 1.0)) if small else None,
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
    time = _time_width(row, columns, letters)
    times = _times(row, time, letters)
    says = _says(row, columns, letters, time, times.height)
    height, pills = _marked(row, says, columns, letters, time if times.height else 0.0)
    drawn = Late(partial(_drawn, row, columns, letters, says, pills, times, time))
    split = not (says.whole and times.whole) or any(block.split for _, _, block in pills)
    return Block(max(height, times.height), ((0.0, 0.0, drawn),), gap, False, again, split, tie)


def _drawn(
    row: Row, columns: Columns, letters: Letters, says: _Texts, pills: _Pills, times: _Texts, time: float
) -> Block:
    """Number, sentences, marks, times, in the order in which they are read."""
    full = columns.room - columns.sentence
    number = Words(cut_words(row.number, (columns.room,), letters.text), columns.room, letters.text)
    parts: list[Part] = [(columns.number, 0.0, number)]
    parts += [(columns.sentence, text.down, Words(text.found, full, text.cap)) for text in says.texts]
    parts += [(columns.sentence + left, down, block) for left, down, block in pills]
    right = columns.room - time
    parts += [(right, text.down, Words(text.found, time, text.cap, align="right")) for text in times.texts]
    return Block(0.0, tuple(parts))


def _marked(
    row: Row, says: _Texts, columns: Columns, letters: Letters, time: float
) -> tuple[float, _Pills]:
    """Length of the sentences with their marks, and the marks: under them, or behind the last line."""
    if not row.marks:
        return says.height, ()
    full = columns.room - columns.sentence
    rows = pill_rows(row.marks, full, letters)
    if row.beside and says.texts and len(rows) == 1 and low(row.marks):
        last = says.texts[-1]
        left = last_width(last.found) * last.cap + letters.space
        # Beside the times a line is short; so is whatever follows on it.
        room = full - (time + letters.space if time else 0.0)
        if left + pills_width(row.marks, letters) <= room:
            top = last.down + last.height - (1 + over(row.marks[0]) - _LOWER) * letters.text
            return max(says.height, top + rows[0].height), ((left, top, rows[0]),)
    placed, y = [], says.height
    for block in rows:
        placed.append((0.0, y + block.gap, block))
        y += block.gap + block.height
    return y, tuple(placed)


def _says(row: Row, columns: Columns, letters: Letters, time: float, beside: float) -> _Texts:
    """Paragraphs; lines beside the times are short, those under them run on to the edge."""
    full = columns.room - columns.sentence
    short = full - time - letters.space
    cap, pitch, between = letters.text, letters.pitch, 0.35 * letters.gap
    texts: list[_Text] = []
    y, whole = 0.0, True
    for words in row.says:
        y += between if texts else 0.0
        lines = int((beside - y) / pitch + 0.98) if beside > y else 0
        found = cut_words(words, (*(short,) * lines, full), cap)
        texts.append(_Text(y, cap, found))
        y += cap * (1 + (len(found.cuts) - 1) * PITCH) + DESCENT * cap
        whole = whole and found.whole
    return _Texts(y, whole, tuple(texts))


def _time_width(row: Row, columns: Columns, letters: Letters) -> float:
    large = row.large[1] * letters.dwell if row.large else 0.0
    small = row.small[1] * letters.text if row.small else 0.0
    return min(max(large, small) + 0.01, 0.42 * columns.room)


def _times(row: Row, room: float, letters: Letters) -> _Texts:
    texts: list[_Text] = []
    y, whole = 0.0, True
    for time, cap in ((row.large, letters.dwell), (row.small, letters.text)):
        if time:
            text = _Text(y + 0.4 * letters.gap if texts else y, cap, cut_words(time[0], (room,), cap))
            texts.append(text)
            y = text.down + text.height + DESCENT * letters.text
            whole = whole and text.found.whole
    return _Texts(y, whole, tuple(texts))


def solid(text: str) -> str:
    """A time is never parted from its unit, nor a label from itself."""
    return text.replace(" ", "\u00a0")
