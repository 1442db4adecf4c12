"""A finished drawing as plain rows for the typesetter: what each mark is, then its numbers and words."""

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any

from generator.outputs.press.drawing import Across, Box, Code, Grid, Ink, Line, Mark, Ruled, Sheet, Sign, Text
from generator.outputs.press.metrics import bold, medium

# Height of capitals and line to line in mm, ink; for the typesetter type size and white between two lines.
Style = tuple[float, float, Ink]
# A string is set in the weight of sentences, a string in a list in bold; None ends a line.
Runs = list[str | list[str] | None]

_LEVELS = {"title": 1, "heading": 2, "text": 0, "mute": -1}
# Micrometres of a mm: a whole number of them is fine enough, and much sooner written than a fraction.
_UM = 1000
_NO_STYLE: Style = (1.0, 0.0, "black")


def sheet_data(sheet: Sheet) -> dict[str, Any]:
    """A sheet for JSON. Texts name their style by its place in `styles`; most texts have the first.

    Where a mark stands is said in micrometres, and the sizes of boxes and pictures; all else in mm.
    """
    texts = Counter((mark.cap, mark.pitch, mark.ink) for mark in sheet.marks if isinstance(mark, Text))
    styles = texts.most_common()
    places = {style: place for place, (style, _) in enumerate(styles)}
    marks = [_row(mark, sheet.width, places) for mark in sheet.marks]
    drawn = [(*_letters(cap, pitch), ink) for (cap, pitch, ink), _ in styles] or [_NO_STYLE]
    return {"width": sheet.width, "height": sheet.height, "styles": drawn, "marks": marks}


def _letters(cap: float, pitch: float) -> tuple[float, float]:
    return cap / medium().cap, pitch - cap


def _row(mark: Mark, width: float, places: Mapping[Style, int]) -> Sequence[object]:
    if isinstance(mark, Text):
        return _text(mark, width, places)
    x, y = int(mark.x * _UM), int(mark.y * _UM)
    match mark:
        case Box(width=wide, height=high):
            # A disc is drawn as a circle.
            round_ = abs(wide - high) < 0.001 and mark.radius * 2 > wide - 0.001
            edge = int(mark.radius * _UM), int(mark.line * _UM)
            return "disc" if round_ else "box", x, y, int(wide * _UM), int(high * _UM), *edge, mark.fill
        case Sign():
            return "sign", x, y, int(mark.size * _UM), mark.name, mark.alt
        case Code():
            return "code", x, y, int(mark.size * _UM), mark.modules, mark.path, mark.alt
        case Grid():
            letters, heads = _letters(mark.cap, mark.pitch), (mark.head, mark.row)
            return "grid", x, y, *letters, mark.line, mark.columns, *heads, mark.rows
        case Ruled():
            rows = [[_runs(lines) for lines in row] for row in mark.rows]
            letters, inside = _letters(mark.cap, mark.pitch), (mark.pad, mark.heights)
            return "ruled", x, y, *letters, mark.line, mark.columns, *inside, rows
        case Across():
            size = mark.cap / bold().cap
            return "across", x, y, mark.width, mark.height, size, mark.angle, mark.word


def _text(mark: Text, width: float, places: Mapping[Style, int]) -> Sequence[object]:
    """Right from the left edge of the sheet; left from its right edge; or right from its middle."""
    x, align = mark.x, mark.align
    if align != "left":
        x += mark.width - width if align == "right" else (mark.width - width) / 2
    place = places[mark.cap, mark.pitch, mark.ink]
    return "text", align, int(x * _UM), int(mark.y * _UM), _LEVELS[mark.role], place, _runs(mark.lines)


def _runs(lines: Sequence[Line]) -> Runs:
    runs: Runs = []
    for number, line in enumerate(lines):
        if number:
            runs.append(None)
        runs += [[run.text] if run.bold else run.text for run in line]
    return runs
