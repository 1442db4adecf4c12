"""Lines of text as pieces with a role, so that form is settled before anything is coloured."""

import textwrap
import unicodedata
from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Piece:
    """Text, and what it is: error, warning, note, accepted, strong, frame, fix or empty."""

    text: str
    role: str = ""


@dataclass(frozen=True, slots=True)
class Line:
    """Pieces in a row; `hang` is the column where a long line goes on, -1 where it must stay whole."""

    pieces: tuple[Piece, ...] = ()
    hang: int = -1

    @property
    def text(self) -> str:
        """The line without roles."""
        return "".join(piece.text for piece in self.pieces)


def text_line(text: str, role: str = "", hang: int = 0) -> Line:
    """A line of one piece."""
    return Line((Piece(text, role),), hang)


def plain_text(lines: Iterable[Line]) -> str:
    """All lines as text, each with its line end."""
    return "".join(f"{line.text}\n" for line in lines)


def visible(text: str) -> str:
    """The text with every character that a screen would obey or hide written out."""
    if text.isprintable():
        return text
    return "".join(char if char.isprintable() or unicodedata.category(char) == "Zs" else _written(char)
                   for char in text)  # fmt: skip


def _written(char: str) -> str:
    if char == "\t":
        return "→"
    return char.encode("unicode_escape").decode("ascii")


def cells(text: str) -> int:
    """How many columns of a screen the text takes."""
    if text.isascii():
        return len(text)
    return sum(_width(char) for char in text)


def _width(char: str) -> int:
    if unicodedata.combining(char):
        return 0
    return 2 if unicodedata.east_asian_width(char) in "WF" else 1


def wrap_line(line: Line, width: int) -> tuple[Line, ...]:
    """The line in as many lines as the screen asks for, each beginning at its hang."""
    if line.hang < 0 or cells(line.text) <= width or width <= line.hang + 16:
        return (line,)
    rows = textwrap.wrap(line.text, width, subsequent_indent=" " * line.hang, drop_whitespace=True,
                         break_long_words=False, break_on_hyphens=False)  # fmt: skip
    return tuple(_cut_pieces(line, rows))


def _cut_pieces(line: Line, rows: list[str]) -> Iterable[Line]:
    """Give each row of wrapped text its roles back."""
    roles = [piece.role for piece in line.pieces for _ in piece.text]
    whole, at = line.text, 0
    for number, row in enumerate(rows):
        inner = row if number == 0 else row[line.hang :]
        at = whole.index(inner, at)
        pieces = [Piece(" " * line.hang)] if number else []
        for char, role in zip(inner, roles[at : at + len(inner)], strict=True):
            same = pieces and pieces[-1].role == role
            kept, text = (pieces[:-1], pieces[-1].text) if same else (pieces, "")
            pieces = [*kept, Piece(text + char, role)]
        at += len(inner)
        yield Line(tuple(pieces))
