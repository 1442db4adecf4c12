"""A chart of a day: lanes of bars over one clock, drawn in black, white and outline alone."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import ceil

from generator.outputs.press.blocks import Block, Part, stacked, text_block, words_in
from generator.outputs.press.drawing import Box, Ink, Run
from generator.outputs.press.letters import DESCENT, Letters
from generator.outputs.press.wrapping import width, words_of
from generator.views.day_plan import BarView, LaneView
from generator.views.paper import PaperLines

_TICKS = (10, 15, 30, 60, 120)
# Height of a bar and of a lane in cap heights.
_BAR, _LANE = 1.7, 2.1
# The column of labels in parts of the room: the same in all charts of a sheet, so that their clocks agree.
_LABELS = 0.23


@dataclass(frozen=True, slots=True)
class _Field:
    """Where the bars stand: left edge and width in mm, and the minutes that they run over."""

    left: float
    wide: float
    start: float
    end: float

    def x(self, minute: float) -> float:
        """Where a minute stands, in mm from the left edge of the chart."""
        return self.left + (minute - self.start) / (self.end - self.start) * self.wide


def lines_block(chart: PaperLines, room: float, letters: Letters) -> Block:
    """Title, clock, lanes, and the note below."""
    title = text_block((Run(chart.title, bold=True),), room, letters.place, role="heading")
    drawn = _drawn(chart, room, letters)
    note = [text_block((Run(chart.note),), room, letters.text, gap=0.5 * letters.gap)] if chart.note else []
    return stacked((title, drawn, *note), gap=letters.space)


def _drawn(chart: PaperLines, room: float, letters: Letters) -> Block:
    left = _LABELS * room
    wide = room - left - letters.gap
    field = _Field(left, wide, float(chart.start), float(chart.end))
    top = 2.2 * letters.text
    rows = [_rows(lane.bars) for lane in chart.lanes]
    foot = (1.2 + DESCENT) * letters.text if chart.ends else 0.0
    height = top + sum(len(row) for row in rows) * _LANE * letters.text + foot
    parts: list[Part] = [*_clock(field, height, top, letters)]
    y = top
    for lane, row in zip(chart.lanes, rows, strict=True):
        parts.append((0.0, y + (_LANE - 1) / 2 * letters.text, _label(lane, left, letters)))
        for bars in row:
            parts += [part for bar in bars for part in _bar(bar, field, y, letters)]
            y += _LANE * letters.text
        parts.append((0.0, y, Box(0.0, 0.0, room - letters.gap, letters.hair, fill="pale")))
    parts += _ends(chart, field, height, letters)
    return Block(height, tuple(parts), gap=0.4 * letters.gap)


def _rows(bars: Sequence[BarView]) -> list[list[BarView]]:
    """Bars that lie over one another go on rows of their own; one row at least."""
    rows: list[list[BarView]] = [[]]
    for bar in bars:
        free = next((row for row in rows if not row or row[-1].end <= bar.start + 1e-6), None)
        if free is None:
            rows.append([bar])
        else:
            free.append(bar)
    return rows


def _label(lane: LaneView, left: float, letters: Letters) -> Block:
    """The label on one line, cut with an ellipsis where it is longer than its column."""
    room, text = left - letters.gap, lane.label
    while width(text, letters.text) > room and len(text) > 2:
        text = f"{text[:-2].rstrip()}\u2026"
    return text_block((Run(text.replace(" ", "\u00a0")),), room + letters.text, letters.text)


def _clock(field: _Field, height: float, top: float, letters: Letters) -> Iterator[Part]:
    """Full hours and what lies between, as close as the times can be read."""
    cap = letters.text
    need = width("00:00", cap) + letters.gap
    step = next((tick for tick in _TICKS if field.x(field.start + tick) - field.left >= need), _TICKS[-1])
    minute = ceil(field.start / step) * step
    while minute <= field.end:
        x = field.x(minute)
        yield x, top - 0.3 * cap, Box(0.0, 0.0, letters.hair, height - top + 0.3 * cap, fill="pale")
        shown = f"{minute // 60:02d}:{minute % 60:02d}"
        half = width(shown, cap) / 2
        if x - half >= field.left - letters.gap and x + half <= field.left + field.wide + letters.gap:
            text = words_in(words_of((Run(shown),)), 2 * half + 0.01, cap, role="mute")
            yield x - half, 0.3 * cap, text
        minute += step


def _bar(bar: BarView, field: _Field, y: float, letters: Letters) -> Iterator[Part]:
    """A bar from its first to its last minute, with its text where that has room."""
    x, wide = field.x(bar.start), field.x(bar.end) - field.x(bar.start)
    high = _BAR * letters.text
    down = y + (_LANE - _BAR) / 2 * letters.text
    edge = 1.4 * letters.hair
    if bar.kind == "hands":
        # A little white parts it from the next one.
        yield x, down, Box(0.0, 0.0, max(wide - edge, letters.hair), high, fill="black")
    else:
        inner = max(wide - edge, letters.hair)
        fill: Ink = "white" if bar.kind == "wait" else "pale"
        yield x + edge / 2, down + edge / 2, Box(0.0, 0.0, inner, high - edge, line=edge, fill=fill)
    wants = width(bar.text, letters.text, heavy=True)
    if bar.text and wants + 2 * edge <= wide:
        ink: Ink = "white" if bar.kind == "hands" else "black"
        runs = (Run(bar.text, bold=True),)
        text = words_in(words_of(runs), wide, letters.text, align="center", role="mute", ink=ink)
        yield x, down + (high - letters.text) / 2, text


def _ends(chart: PaperLines, field: _Field, height: float, letters: Letters) -> Iterator[Part]:
    """Lines through all lanes, their words at the foot of the lanes at the left of the line."""
    for minute, words in chart.ends:
        x = field.x(minute)
        line = Box(0.0, 0.0, letters.bar / 2, height - 1.6 * letters.text, fill="black")
        yield x - letters.bar / 2, 1.6 * letters.text, line
        wide = width(words, letters.text, heavy=True)
        runs = (Run(words.replace(" ", "\u00a0"), bold=True),)
        text = words_in(words_of(runs), wide + 0.01, letters.text, role="mute")
        yield x - wide - letters.gap, height - (1 + DESCENT) * letters.text, text
