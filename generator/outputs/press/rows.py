"""One step as a row: number, sentence with what belongs to it, marks; its times large at the right."""

from collections.abc import Sequence
from dataclasses import dataclass

from generator.outputs.press.blocks import Block, Words, paragraph, stacked, text_block
from generator.outputs.press.drawing import Run
from generator.outputs.press.letters import DESCENT, Letters
from generator.outputs.press.pills import low, over, pill_rows, pills_width
from generator.outputs.press.wrapping import width
from generator.views.card import CardMark, CardStep


@dataclass(frozen=True, slots=True)
class Columns:
    """Inside the column of steps, in mm: its room, left edge of numbers, left edge of sentences."""

    room: float
    number: float
    sentence: float


def step_row(
    step: CardStep,
    parts: Sequence[tuple[Run, ...]],
    marks: Sequence[CardMark],
    columns: Columns,
    letters: Letters,
    *,
    beside: bool,
) -> Block:
    """The row; with `beside` its marks stand behind the last line where there is room for them."""
    time = _time_width(step, columns, letters)
    times = _times(step, time, letters)
    number = paragraph((Run(step.number, bold=True),), columns.room, letters.text)
    says = _says(parts, columns, letters, time, times.height)
    body = _marked(says, marks, columns, letters, time if times.height else 0.0, beside=beside)
    drawn = ((columns.number, 0.0, number), (columns.sentence, 0.0, body), (columns.room - time, 0.0, times))
    return Block(max(body.height, times.height), drawn, split=body.split or times.split)


def _marked(
    says: Block, marks: Sequence[CardMark], columns: Columns, letters: Letters, time: float, *, beside: bool
) -> Block:
    """Sentences with the marks under them, or behind the last line."""
    full = columns.room - columns.sentence
    pills = pill_rows(marks, full, letters)
    last = _last_line(says)
    if beside and last and len(pills) == 1 and low(marks):
        text, down = last
        left = text.last + letters.space
        # Beside the times a line is short; so is whatever follows on it.
        room = full - (time + letters.space if time else 0.0)
        if left + pills_width(marks, letters) <= room:
            top = down + text.height - (1 + over(marks[0])) * letters.text
            height = max(says.height, top + pills[0].height)
            return says._replace(height=height, parts=(*says.parts, (left, top, pills[0])))
    return stacked([says, *pills])


def _last_line(says: Block) -> tuple[Words, float] | None:
    """The text that holds the last line, and how far down it starts; None where there is none."""
    _, down, last = says.parts[-1] if says.parts else (0.0, 0.0, None)
    if isinstance(last, Block):
        found = _last_line(last)
        return (found[0], found[1] + down) if found else None
    return (last, down) if isinstance(last, Words) else None


def _says(
    parts: Sequence[tuple[Run, ...]], columns: Columns, letters: Letters, time: float, beside: float
) -> Block:
    """Paragraphs; lines beside the times are short, those under them run on to the edge."""
    full = columns.room - columns.sentence
    short = full - time - letters.space
    rows: list[Block] = []
    y = 0.0
    for runs in parts:
        gap = 0.35 * letters.gap if rows else 0.0
        lines = int(max(0.0, beside - y - gap) / letters.pitch + 0.98)
        rows.append(text_block(runs, (*(short,) * lines, full), letters.text, gap=gap))
        y += gap + rows[-1].height
    return stacked(rows)


def _time_width(step: CardStep, columns: Columns, letters: Letters) -> float:
    dwell = width(step.dwell_shown or step.amount_shown, letters.dwell, heavy=True)
    return min(max(dwell, width(step.window_shown, letters.text)) + 0.01, 0.42 * columns.room)


def _times(step: CardStep, room: float, letters: Letters) -> Block:
    rows: list[Block] = []
    large = step.dwell_shown or step.amount_shown
    shown = ((large, letters.dwell, True), (step.window_shown, letters.text, False))
    for text, cap, heavy in shown:
        if text:
            run = (Run(solid(text) if heavy else text, heavy),)
            lines = paragraph(run, room, cap, align="right")
            height = lines.height + DESCENT * letters.text
            rows.append(Block(height, ((0.0, 0.0, lines),), 0.4 * letters.gap, split=not lines.found.whole))
    return stacked(rows)


def solid(text: str) -> str:
    """A time is never parted from its unit, nor a label from itself."""
    return text.replace(" ", "\u00a0")
