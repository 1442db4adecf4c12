"""Lines onto a stream: wrapped and coloured on a screen, plain in a pipe or a file."""

import shutil
import sys
from collections.abc import Iterable
from typing import TextIO

from generator.cli.lines import Line, plain_text, wrap_line

_STYLES = {
    "error": "bold red",
    "warning": "bold yellow",
    "note": "bold cyan",
    "accepted": "bold green",
    "strong": "bold",
    "fix": "bold",
    "frame": "blue",
}


def show(lines: Iterable[Line], stream: TextIO | None = None) -> None:
    """Write lines to the standard output, or to another stream."""
    out = stream or sys.stdout
    if out.isatty():
        _paint(lines, out)
    else:
        out.write(plain_text(lines))
        out.flush()


def _paint(lines: Iterable[Line], out: TextIO) -> None:
    from rich.console import Console
    from rich.text import Text

    console = Console(file=out, highlight=False, markup=False, emoji=False)
    for line in lines:
        for row in wrap_line(line, console.width):
            parts = ((piece.text, _STYLES.get(piece.role, "")) for piece in row.pieces)
            console.print(Text.assemble(*parts), soft_wrap=True)


def screen_width() -> int:
    """Columns of the screen behind the standard output, 0 where that is no screen."""
    return shutil.get_terminal_size().columns if sys.stdout.isatty() else 0
