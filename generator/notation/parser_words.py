"""What the YAML parser says, in an author's words."""

import re

import yaml

from generator.problems import Level, Location, Problem

_STRAY = (
    "a line stands here that is no field and belongs to no sentence",
    "write it as `field: value`, or indent it deeper than the field whose sentence it goes on",
)
_WORDS = (
    (
        "mapping values are not allowed",
        "a second `: ` stands on a line that already has one",
        "put the sentence in straight double quotes",
    ),
    (
        "did not find expected key",
        "the indentation does not fit the lines above",
        "bring the line under the fields that it belongs to",
    ),
    (
        "did not find expected '-' indicator",
        "a line is indented like the list above it but does not start with `- `",
        "start it with `- ` or move it left",
    ),
    (
        "did not find expected ',' or",
        "brackets or braces are not closed",
        "close them on the same line, and put sentences with commas in quotes",
    ),
    (
        "unexpected end of stream",
        "a quote, bracket or brace is opened and never closed",
        "close it where the text ends",
    ),
    (
        "expected a single document",
        "a line of three dashes starts a second document",
        "delete the line; one file holds one document",
    ),
    (
        "undefined alias",
        "a value begins with *, which YAML takes for an alias",
        "put the text in straight double quotes",
    ),
    (
        "maximum nesting depth",
        "brackets or braces stand very deep inside one another",
        "look for brackets that are never closed",
    ),
    (
        "did not find expected node content",
        "a comma, bracket or brace too many stands here",
        "delete it, or write the value that is missing before it",
    ),
    (
        "could not find expected ':'",
        *_STRAY,
    ),
    (
        "escape c",  # an unknown one, or one of no letter
        "a backslash in double quotes begins an escape, and this is none",
        "write two backslashes, or put the text in single quotes",
    ),
    (
        "expected hexdecimal number",
        "a backslash in double quotes begins an escape, and this is none",
        "write two backslashes, or put the text in single quotes",
    ),
)
_FIELD = re.compile(r"\s*(?:- +)*[A-Za-z_][\w-]*:(?:\s|$)")
_BEHIND = re.compile(
    r"""(?P<field>\s*(?:- +)*[A-Za-z_][\w-]*: +)(?P<quoted>"(?:[^"\\]|\\.)*"|'[^']*')(?P<rest>\s*[^\s#].*)$"""
)
_START = re.compile(r"\s*(?:- +)*")
_NO_FIELD = ("mapping values are not allowed", "could not find expected ':'")
_GLUED = re.compile(r"\s*(?:- +)*([a-z_]+):(?=[^\s:/])(.*\S)")
_OPENED = re.compile(r"""\s*(?:- +)*[A-Za-z_][\w-]*: +("(?:[^"\\]|\\.)*|'(?:[^']|'')*)$""")
_CLOSING = (
    "a bracket or brace is closed here that was never opened",
    "delete it, or put the sentence in straight double quotes",
)


def parser_problem(bad: yaml.YAMLError, file: str, text: str = "") -> Problem:
    """The parser's one complaint about a text, located at the author's slip where that can be told."""
    said = " ".join(str(getattr(bad, part, "") or "") for part in ("context", "problem")) or str(bad)
    mark = getattr(bad, "problem_mark", None) or getattr(bad, "context_mark", None)
    where = Location(file, mark.line + 1, mark.column + 1) if mark else Location(file)
    lines = text.split("\n")
    slip = _open_quote(where, lines) or _no_field(said, where, lines) or _behind_quote(said, where, lines)
    if slip:
        return slip
    if mark and text[mark.index : mark.index + 1] in ("]", "}") and "node content" not in said:
        return Problem("unreadable", Level.ERROR, where, *_CLOSING)
    opened = getattr(bad, "context_mark", None)
    if "did not find expected ',' or" in said and opened and _goes_on(lines, opened.line, where.line - 1):
        where = Location(file, opened.line + 1, opened.column + 1)
    for sign, message, fix in _WORDS:
        if sign in said:
            return Problem("unreadable", Level.ERROR, where, message, fix)
    return Problem(
        "unreadable",
        Level.ERROR,
        where,
        f"the text cannot be read here ({said.strip()})",
        "compare indentation, quotes and colons with the lines above",
    )


def _no_field(said: str, where: Location, lines: list[str]) -> Problem | None:
    """A field indented too deep, or a line before it that is no field: the parser blames a colon for both."""
    row = where.line - 1
    if not any(sign in said for sign in _NO_FIELD) or row >= len(lines) or not _FIELD.match(lines[row]):
        return None
    before = row - 1
    while before > 0 and (not lines[before].strip() or lines[before].lstrip().startswith("#")):
        before -= 1
    if before < 0:
        return None
    if _FIELD.match(lines[before]) and _begin(lines[row]) > _begin(lines[before]):
        return _slip(
            Location(where.file, row + 1, _begin(lines[row]) + 1),
            "the line is indented deeper than the field above it, which has a value already",
            "move it left under the fields beside it, or write above it the field that it belongs to",
        )
    glued = _GLUED.match(lines[before])
    if glued is None:
        line, begin = lines[before], _begin(lines[before])
        place = Location(where.file, before + 1, begin + 1, max(1, len(line.strip())))
        return None if ":" in line or begin != _begin(lines[row]) else _slip(place, *_STRAY)
    return _slip(
        Location(where.file, before + 1, glued.start(1) + 1, len(glued[1]) + 1),
        "no space stands behind the colon of a field",
        f"write `{glued[1]}: {glued[2]}`",
    )


def _behind_quote(said: str, where: Location, lines: list[str]) -> Problem | None:
    """A sentence that goes on behind its closing quote, as after the apostrophe in 'Don't touch it.'."""
    found = _BEHIND.match(lines[where.line - 1]) if where.line <= len(lines) else None
    if found is None or "did not find expected key" not in said:
        return None
    start, value = found["field"], found["quoted"] + found["rest"].rstrip()
    whole = value[1:-1] if value.endswith(value[0]) and len(value) > 2 else value
    inner = whole.replace("\\", "\\\\").replace('"', '\\"')
    return _slip(where, "the sentence goes on behind its closing quote", f'write `{start.lstrip()}"{inner}"`')


def _open_quote(where: Location, lines: list[str]) -> Problem | None:
    """The last quote above a complaint that is not closed before the next field begins."""
    for row in range(min(where.line, len(lines)) - 1, 0, -1):
        opened = _OPENED.match(lines[row - 1]) if _goes_on(lines, row - 1, row) else None
        if opened:
            return _slip(
                Location(where.file, row, opened.start(1) + 1, len(opened[1])),
                "a quote is opened here and not closed before the next field",
                f"close it at the end of the line: `{lines[row - 1].strip()}{opened[1][0]}`",
            )
    return None


def _goes_on(lines: list[str], first: int, later: int) -> bool:
    """Whether a later row is a field or an entry that is no part of the first row's."""
    if not first < later < len(lines) or not _FIELD.match(lines[later]):
        return False
    return len(lines[later]) - len(lines[later].lstrip()) <= _begin(lines[first])


def _begin(line: str) -> int:
    """The column, from 0, where a line's text begins behind its dashes."""
    start = _START.match(line)
    return start.end() if start else 0


def _slip(where: Location, message: str, fix: str) -> Problem:
    return Problem("unreadable", Level.ERROR, where, message, fix)
