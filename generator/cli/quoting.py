"""The author's line with a run of carets under what is meant."""

import re
from collections.abc import Iterator

from generator.cli.lines import Line, Piece, cells, visible
from generator.problems import Location, Problem

GUTTER = 3
_NAMED = re.compile(r"\{?\s*(?P<key>[\w-]+)\s*:(?:\s+(?P<value>[^\s,}][^,}]*?))?\s*(?:[,}]|\s#|$)")
_NAMING = ("id", "stage", "rule")
_CUT = "…"


def quote_lines(problem: Problem, text: str, width: int = 0) -> Iterator[Line]:
    """A frame line, the quoted line, the carets with their label; nothing where there is no line."""
    where = problem.where
    rows = text.split("\n") if text else []
    if not 1 <= where.line <= len(rows) or not rows[where.line - 1].strip():
        return
    row = rows[where.line - 1]
    start, end = _span(where, row)
    lead, meant, rest = (visible(part) for part in (row[:start], row[start:end], row[end:]))
    gutter = max(GUTTER, len(str(where.line)))
    lead, meant, rest = _crop(lead, meant, rest, width - gutter - 2)
    frame = Piece(f"{' ' * gutter}|", "frame")
    yield Line((frame,))
    yield Line((Piece(f"{where.line:>{gutter}}|", "frame"), Piece(f" {lead}{meant}{rest}")))
    carets = Piece("^" * max(cells(meant), 1), str(problem.level))
    label = (Piece(f" {visible(problem.label)}", str(problem.level)),) if problem.label else ()
    hang = gutter + 2 + cells(lead)
    yield Line((frame, Piece(f" {' ' * cells(lead)}"), carets, *label), hang)


def _span(where: Location, row: str) -> tuple[int, int]:
    """First index and end of what is meant; for a whole noun the name that it goes by."""
    start = min(max(where.column - 1, 0), len(row))
    if where.length > 1:
        return start, max(min(start + where.length, len(row.rstrip())), start)
    named = _NAMED.match(row, start)
    if not named:
        return start, min(start + 1, len(row))
    part = "value" if named["key"] in _NAMING and named["value"] else "key"
    return named.start(part), named.end(part)


def _crop(lead: str, meant: str, rest: str, room: int) -> tuple[str, str, str]:
    """What fits on the screen, with the meant part in sight."""
    if room < 20 or cells(lead + meant + rest) <= room:
        return lead, meant, rest
    over = cells(lead + meant) + 1 - room
    if over > 0:
        keep = max(len(lead) - over - 1, 0) if cells(meant) < room else 0
        lead = _CUT + lead[len(lead) - keep :] if lead else lead
    meant = meant if cells(lead + meant) < room else meant[: room - len(lead) - 1]
    left = room - cells(lead + meant) - 1
    return lead, meant, rest if cells(rest) <= left + 1 else rest[: max(left, 0)] + _CUT
