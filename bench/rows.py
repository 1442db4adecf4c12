"""Rows of the table: what was measured, how often, the ratio with its spread, and the goal."""

from collections.abc import Iterable
from dataclasses import dataclass

from bench.measuring import Pair


@dataclass(frozen=True, slots=True)
class Row:
    """One line; `count` is how many things were worked on at once, `goal` is empty where none is set."""

    what: str
    count: int
    runs: int
    ours: str
    yardstick: str
    ratio: str
    spread: str
    goal: str = ""


def pair_row(what: str, count: int, against: str, pair: Pair, goal: str = "") -> Row:
    """A row of two times taken by turns."""
    spread = f"{pair.ours.spread:.0%} / {pair.yardstick.spread:.0%}"
    yardstick = f"{against} {shown(pair.yardstick.median)}"
    ratio = f"{pair.ratio:.2f}x"
    return Row(what, count, len(pair.ours.seconds), shown(pair.ours.median), yardstick, ratio, spread, goal)


def not_measured(what: str, count: int, why: str) -> Row:
    """A row for what could not be measured in this run."""
    return Row(what, count, 0, "not measured", why, "", "")


def shown(seconds: float) -> str:
    """Seconds with three figures, in ms below one second."""
    return f"{seconds * 1000:.3g} ms" if seconds < 1 else f"{seconds:.3g} s"


HEADS = Row("what", 0, 0, "ours", "yardstick", "ratio", "spread of both", "goal")


def table(rows: Iterable[Row]) -> str:
    """The rows as a table of Markdown, its columns level, so that a page can take it as it is printed."""
    cells = [_cells(HEADS, "N", "runs"), *(_cells(row, f"{row.count:,}", str(row.runs)) for row in rows)]
    widths = [max(len(row[column]) for row in cells) for column in range(len(cells[0]))]
    lines = [f"| {' | '.join(map(str.ljust, row, widths))} |\n" for row in cells]
    rule = f"| {' | '.join('-' * width for width in widths)} |\n"
    return "".join((lines[0], rule, *lines[1:]))


def _cells(row: Row, count: str, runs: str) -> tuple[str, ...]:
    return (row.what, count, runs, row.ours, row.yardstick, row.ratio, row.spread, row.goal)
