"""Lays one label out: name, pictograms, signal word, statements, what the workplace adds; or has no room."""

from collections.abc import Iterator
from typing import NamedTuple

from generator.outputs.press.drawing import Box, Role, Run, Text
from generator.outputs.press.label_sizes import DRAWING_PER_SIDE, VolumeClass, inner_edge
from generator.outputs.press.letters import DESCENT
from generator.outputs.press.wrapping import broken, whole, width
from generator.views.labels import ContainerLabelView

# Name and signal word over the size of the other letters (common practice, no source).
_NAME, _SIGNAL = 1.5, 1.7
_GAP = 1.0
_BLANK = 3.0
# The shortest line for day and month, in mm (ours, no source).
_LEAST_LINE = 12.0


class Pictogram(NamedTuple):
    """A GHS pictogram; `size` is the side of the square drawing, `side` that of its red diamond, in mm."""

    x: float
    y: float
    size: float
    side: float
    code: str
    alt: str


Mark = Text | Box | Pictogram


def label_texts(view: ContainerLabelView) -> Iterator[str]:
    """Every text of a label."""
    yield from (view.title, view.under, view.label.signal, view.label.unknown, view.label.declared)
    yield from (view.caution, view.over, view.stop, *view.lines, *view.blanks)
    for row in (*view.label.statements, *view.label.precautions):
        yield from (row.code, row.text)


class _Column:
    """A column being filled from the top; `fits` turns False once a word or line has no room."""

    def __init__(self, size: tuple[float, float], volume: VolumeClass) -> None:
        edge = inner_edge(size)
        self.left, self.top = edge, edge
        self.room = size[0] - 2 * edge
        self.bottom = size[1] - edge
        self.cap = volume.cap
        self.pitch = volume.pitch
        self.marks: list[Mark] = []
        self.fits = True

    def text(self, runs: tuple[Run, ...], scale: float = 1.0, role: Role = "text", left: float = 0.0) -> None:
        """Lines of text under what stands already."""
        cap, pitch, room = self.cap * scale, self.pitch * scale, self.room - left
        self.fits = self.fits and whole(runs, room, cap)
        lines = broken(runs, (room,), cap)
        mark = Text(self.left + left, self.top, room, cap, pitch, lines, role)
        self.marks.append(mark)
        self.top += (len(lines) - 1) * pitch + cap + max(DESCENT * cap, pitch - cap)
        self.fits = self.fits and self.top - (pitch - cap) + DESCENT * cap <= self.bottom + pitch - cap

    def space(self, height: float) -> None:
        """White."""
        self.top += height


def laid_out(
    view: ContainerLabelView, volume: VolumeClass, size: tuple[float, float]
) -> tuple[Mark, ...] | None:
    """The marks of a label of that size (mm), from its top left corner; None where something has no room."""
    column = _Column(size, volume)
    if view.over:
        column.text((Run(view.over, bold=True),), _NAME)
    column.text((Run(view.title, bold=True),), _NAME, "heading")
    column.text((Run(view.under),))
    _signs(column, view, volume)
    for row in view.label.statements:
        column.text((Run(f"{row.text}.", bold=True), Run(f"({row.code})")))
    for row in view.label.precautions:
        column.text((Run(f"{row.text.rstrip('.')}."), Run(f"({row.code})")))
    if view.stop:
        column.text((Run(view.stop, bold=True),))
    for line in (view.label.unknown, view.label.declared, *view.lines, view.caution):
        if line:
            column.text((Run(line),))
    column.text((Run(f"Label for containers {volume.name}."),))
    _blanks(column, view)
    if not column.fits or column.top > column.bottom + 1e-6:
        return None
    return tuple(column.marks)


def _signs(column: _Column, view: ContainerLabelView, volume: VolumeClass) -> None:
    """Pictograms in rows, the signal word beside the last one where there is room, else under it."""
    drawn = volume.pictogram * DRAWING_PER_SIDE
    across = max(1, int(column.room / drawn))
    column.fits = column.fits and drawn <= column.room
    for number, sign in enumerate(view.label.pictograms):
        row, place = divmod(number, across)
        x, y = column.left + place * drawn, column.top + row * drawn
        column.marks.append(Pictogram(x, y, drawn, volume.pictogram, sign.code, sign.alt))
    count = len(view.label.pictograms)
    rows = -(-count // across)
    signal = (Run(view.label.signal, bold=True),)
    wide = width(view.label.signal, column.cap * _SIGNAL, heavy=True) if view.label.signal else 0.0
    used = (count - (rows - 1) * across) * drawn if rows else 0.0
    if rows and wide and used + _GAP + wide <= column.room:
        beside = column.top + (rows - 0.5) * drawn - column.cap * _SIGNAL / 2
        lines = (signal,)
        cap, pitch = column.cap * _SIGNAL, column.pitch * _SIGNAL
        column.marks.append(
            Text(column.left + used + _GAP, beside, column.room - used - _GAP, cap, pitch, lines)
        )
        column.space(rows * drawn + _GAP)
        return
    column.space(rows * drawn + (_GAP if rows else 0.0))
    if wide:
        column.text(signal, _SIGNAL)


def _blanks(column: _Column, view: ContainerLabelView) -> None:
    """Words with a line to write on, side by side; all lines are of one length."""
    if not view.blanks:
        return
    column.space(_BLANK)
    wides = [width(words, column.cap) for words in view.blanks]
    line = (column.room - sum(wides)) / len(wides) - 2 * _GAP
    column.fits = column.fits and line >= _LEAST_LINE
    x = column.left
    for words, wide in zip(view.blanks, wides, strict=True):
        column.marks.append(Text(x, column.top, wide + _GAP, column.cap, column.pitch, ((Run(words),),)))
        column.marks.append(Box(x + wide + _GAP, column.top + column.cap, line, 0.15, fill="black"))
        x += wide + line + 2 * _GAP
    column.space(column.cap)
