"""What a sheet is drawn from: texts, shapes, signs, tables, each at its place in mm."""

from dataclasses import dataclass
from typing import Any, Literal, NamedTuple, TypeVar

Ink = Literal["black", "white", "pale"]
# A mute text is not read out: words near it say the same.
Role = Literal["title", "heading", "text", "mute"]


class Run(NamedTuple):
    """Letters of one weight in a line."""

    text: str
    bold: bool = False


Line = tuple[Run, ...]


class Text(NamedTuple):
    """Lines of text; `y` is the top of the first line's capitals, `cap` their height, `pitch` line to line.

    A right-aligned text ends at x + width, a centred one stands in the middle of it.
    """

    x: float
    y: float
    width: float
    cap: float
    pitch: float
    lines: tuple[Line, ...]
    role: Role = "text"
    align: Literal["left", "center", "right"] = "left"
    ink: Ink = "black"

    @property
    def height(self) -> float:
        """From the top of the first capitals to the last base line."""
        return self.cap + (len(self.lines) - 1) * self.pitch


class Box(NamedTuple):
    """A rectangle with its corner radius; `line` is the thickness of its outline, 0 for none."""

    x: float
    y: float
    width: float
    height: float
    line: float = 0.0
    fill: Ink | None = None
    radius: float = 0.0


class Sign(NamedTuple):
    """A drawn sign of the bundled set by its file name, with the words that stand for it."""

    x: float
    y: float
    size: float
    name: str
    alt: str


class Code(NamedTuple):
    """A QR code's dark modules as an SVG path on a grid of `modules`, quiet zone included.

    Strokes run along whole numbers, so that the grid begins half a module above 0.
    """

    x: float
    y: float
    size: float
    modules: int
    path: str
    alt: str


class Grid(NamedTuple):
    """A ruled table: column widths, height of the heads and of a row, letters, thickness of its lines.

    The first of `rows` holds the heads; a line break inside a head is a new line.
    """

    x: float
    y: float
    columns: tuple[float, ...]
    head: float
    row: float
    cap: float
    pitch: float
    line: float
    rows: tuple[tuple[str, ...], ...]
    alt: str


class Ruled(NamedTuple):
    """A form: column widths, a height for each row, cells as lines of runs; the first row holds the heads.

    `pad` is the white inside a cell's edges, `line` the thickness of the rules. An empty cell is written in.
    """

    x: float
    y: float
    columns: tuple[float, ...]
    heights: tuple[float, ...]
    cap: float
    pitch: float
    pad: float
    line: float
    rows: tuple[tuple[tuple[Line, ...], ...], ...]


class Across(NamedTuple):
    """A pale word laid across the whole sheet, under everything else."""

    x: float
    y: float
    width: float
    height: float
    cap: float
    angle: float
    word: str


Mark = Text | Box | Sign | Code | Grid | Ruled | Across
AMark = TypeVar("AMark", bound=tuple[Any, ...])


@dataclass(frozen=True, slots=True)
class Sheet:
    """A finished drawing: title and language of the document, sheet in mm, marks in reading order."""

    title: str
    language: str
    width: float
    height: float
    marks: tuple[Mark, ...]


def moved(mark: AMark, dx: float, dy: float) -> AMark:
    """The same mark, `dx` mm to the right and `dy` mm down; its place comes first in every kind of mark."""
    x, y, *others = mark
    kind: Any = type(mark)
    there: AMark = kind(x + dx, y + dy, *others)
    return there


def plain_mark(mark: NamedTuple) -> dict[str, object]:
    """A mark as a mapping for JSON, its kind first."""
    return {"kind": type(mark).__name__, **{name: _plain(value) for name, value in mark._asdict().items()}}


def _plain(value: object) -> object:
    if isinstance(value, Run):
        return {"text": value.text, "bold": value.bold}
    if isinstance(value, tuple):
        return [_plain(each) for each in value]
    return value
