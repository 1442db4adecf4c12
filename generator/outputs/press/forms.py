"""Forms as blocks: ruled tables with cells to write in and boxes to tick, labelled lines, paragraphs."""

from collections.abc import Sequence
from dataclasses import dataclass

from generator.outputs.press.blocks import Block, Part, abreast, text_block
from generator.outputs.press.drawing import Box, Line, Ruled, Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.wrapping import broken, whole
from generator.views.paper import PaperBlanks, PaperCell, PaperLines, PaperPart, PaperTable, PaperWords

# Least height of a row that somebody writes in, in mm (common practice, no source).
_WRITTEN = 7.0
_TICK = 4.2
_PAD = 0.45


@dataclass(frozen=True, slots=True)
class _Row:
    """A row set in lines: its cells, which of them are ticked, its height in mm, no word broken."""

    cells: tuple[tuple[Line, ...], ...]
    ticks: tuple[bool, ...]
    height: float
    whole: bool


@dataclass(frozen=True, slots=True)
class Form:
    """A table set to a width: its heads and its rows, to be cut between two rows where a page ends."""

    columns: tuple[float, ...]
    head: _Row
    rows: tuple[_Row, ...]
    letters: Letters

    def height(self, first: int, last: int) -> float:
        """Height in mm of the heads and rows `first` to `last`, the last one not counted."""
        return self.head.height + sum(row.height for row in self.rows[first:last])

    def block(self, first: int, last: int) -> Block:
        """Those rows under their heads."""
        rows = (self.head, *self.rows[first:last])
        letters = self.letters
        ruled = Ruled(
            0.0, 0.0, self.columns, tuple(row.height for row in rows), letters.text, letters.pitch,
            _PAD * letters.text, letters.hair, tuple(row.cells for row in rows),
        )  # fmt: skip
        split = not all(row.whole for row in rows)
        return Block(self.height(first, last), ((0.0, 0.0, ruled), *self._ticks(rows)), split=split)

    def _ticks(self, rows: Sequence[_Row]) -> list[Part]:
        found: list[Part] = []
        y = 0.0
        for row in rows:
            for number, ticked in enumerate(row.ticks):
                if ticked:
                    x = sum(self.columns[:number]) + (self.columns[number] - _TICK) / 2
                    square = Box(0.0, 0.0, _TICK, _TICK, line=1.4 * self.letters.hair)
                    found.append((x, y + (row.height - _TICK) / 2, square))
            y += row.height
        return found


def form(table: PaperTable, room: float, letters: Letters) -> Form:
    """A table over the whole room, columns by their shares."""
    columns = tuple(room * share / sum(table.shares) for share in table.shares)
    head = _row(tuple(PaperCell(lead=text) for text in table.heads), columns, letters, least=0.0)
    rows = tuple(_row(cells, columns, letters, least=_least(cells)) for cells in table.rows)
    return Form(columns, head, rows, letters)


def _least(cells: Sequence[PaperCell]) -> float:
    return _WRITTEN if any(not (cell.text or cell.lead) for cell in cells) else 0.0


def _row(cells: Sequence[PaperCell], columns: Sequence[float], letters: Letters, *, least: float) -> _Row:
    pad = _PAD * letters.text
    set_cells, height, fits = [], least, True
    for cell, column in zip(cells, columns, strict=True):
        runs = cell_runs(cell)
        room = column - 2 * pad
        lines = broken(runs, (room,), letters.text) if runs else ()
        set_cells.append(lines)
        fits = fits and whole(runs, room, letters.text)
        height = max(height, letters.text + (len(lines) - 1) * letters.pitch + 3.2 * pad if lines else 0.0)
    return _Row(tuple(set_cells), tuple(cell.tick for cell in cells), height, fits)


def cell_runs(cell: PaperCell | PaperWords) -> list[Run]:
    """Lead in bold, then text; nothing for a blank."""
    lead = [Run(cell.lead, bold=True)] if cell.lead else []
    return [*lead, *([Run(cell.text)] if cell.text else [])]


def blanks(line: PaperBlanks, room: float, letters: Letters) -> Block:
    """Labels side by side, each over a rule to write on or over its text."""
    count = len(line.labels)
    wide = (room - (count - 1) * letters.space) / count
    texts = (*line.texts, *[""] * (count - len(line.texts)))
    columns = [_blank(label, text, wide, letters) for label, text in zip(line.labels, texts, strict=True)]
    return abreast(columns, [n * (wide + letters.space) for n in range(count)], gap=letters.space)


def _blank(label: str, text: str, wide: float, letters: Letters) -> Block:
    runs = [Run(label, bold=True), *([Run(text)] if text else [])]
    words = text_block(runs, wide, letters.text)
    down = words.height if text else words.height + _WRITTEN - letters.text
    rule = Box(0.0, 0.0, wide, letters.hair, fill="black")
    return Block(down + letters.hair, (*words.parts, (0.0, down, rule)), split=words.split)


def paragraph_block(part: PaperWords, room: float, letters: Letters) -> Block:
    """A paragraph over the whole room."""
    return text_block(cell_runs(part), room, letters.text, gap=letters.gap)


def texts_of(part: PaperPart) -> list[str]:
    """Every text of a part, in no special order."""
    match part:
        case PaperTable():
            cells = [text for row in part.rows for cell in row for text in (cell.lead, cell.text)]
            return [part.title, *part.heads, part.note, *cells]
        case PaperBlanks():
            return [*part.labels, *part.texts]
        case PaperLines():
            bars = [bar.text for lane in part.lanes for bar in lane.bars]
            ends = [words for _, words in part.ends]
            labels = [lane.label for lane in part.lanes]
            return [part.title, part.note, "0123456789:\u2026", *labels, *bars, *ends]
    return [part.lead, part.text]
