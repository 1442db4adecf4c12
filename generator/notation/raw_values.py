"""The plain values of a raw text that may be slips: no quoted text, no block text, no line that is good."""

import re
from dataclasses import dataclass
from functools import lru_cache

OPENING = "\u201c\u201d\u201e\u2018\u2019\u00ab\u2039"
_KEY = re.compile(
    r"""("[^"]*"|'[^']*'|[^\s#"'{}\[\],:-][^#"'{}\[\]:]*+|-[^\s#"'{}\[\],:][^#"'{}\[\]:]*+):(?:\s+|$)"""
)
_BLOCK = re.compile(r"[|>][+-]?\d?[+-]?\s*(#.*)?$")
_START = re.compile(r"(\s*)(?:- \s*)*")
_DIVIDER = re.compile(r"(?:---|\.\.\.)\s*(?:#.*)?$")
_FLOW_SIGN = re.compile(r"""[{}\[\],'"#]""")
_FLOW_END = re.compile(r"[,}\]{\[]")
# The rest of quoted text with the quote that closes it.
_QUOTED = {'"': re.compile(r'(?:[^"\\]++|\\.)*+"'), "'": re.compile(r"(?:[^']++|'')*+'")}
# Most lines hold nothing that can be a slip: a name, a few words, or braces with names and words.
_NAME = r"\s*+(?:- \s*+)*+(?:[a-z][a-z0-9_-]*+:(?:\s++|$))?"
_WORDS = re.compile(_NAME + r"(?:[A-Za-z0-9][^#:]*+)?$")
_BRACES = re.compile(
    _NAME + r"""[{[](?:\s*+(?:[a-z][a-z0-9_-]*+:\s++)?(?:[A-Za-z0-9][^#:{}[\],'"]*+)?[{}[\],])++\s*+$"""
)
# Few values can be a slip: those that begin with a sign, or hold what ends a value for YAML.
_FIRST = frozenset(OPENING + "><%@*&!`-")
_INSIDE = re.compile(r"\s#|: |:$")


@dataclass(frozen=True, slots=True)
class Value:
    """A plain scalar on one line: where it starts, its whole text with all that follows on the line.

    `before` is the line's beginning; inside braces it is left out, since a line may hold very many values.
    """

    line: int
    column: int
    text: str
    before: str = ""
    flow: bool = False


def plain_values(lines: list[str]) -> list[Value]:
    """Plain values that may be slips, of block lines and inside braces; no quoted text, no block text."""
    reader, good = _Lines(lines), [*map(_is_good, lines), False]
    while (row := good.index(False, reader.row)) < len(lines):
        reader.row = row
        reader.step()
    return reader.found


@lru_cache(maxsize=8192)
def _is_good(line: str) -> bool:
    """Whether a line by itself can hold no slip; a save leaves most lines as they were."""
    return _WORDS.match(line) is not None or _closes(line)


def _closes(line: str) -> bool:
    """Whether a line is braces with names and words, and leaves none open."""
    braces = _BRACES.match(line) is not None
    return braces and line.count("{") + line.count("[") <= line.count("}") + line.count("]")


class _Lines:
    """A cursor over the lines that knows when it is inside a block sentence, quotes or braces."""

    def __init__(self, lines: list[str]) -> None:
        self.lines = lines
        self.row = 0
        self.found: list[Value] = []

    def step(self) -> None:
        line = self.lines[self.row]
        start = _START.match(line)
        assert start is not None
        at = start.end()
        empty = at >= len(line) or line[at] == "#" or line[at:].rstrip() == "-"  # its entry begins below
        if empty or (line[0] in "-." and _DIVIDER.match(line)):
            self.row += 1
            return
        key = _KEY.match(line, at)
        self.value(line, key.end() if key else at, start.end(1))

    def value(self, line: str, at: int, indent: int) -> None:
        first = line[at : at + 1]
        if first in ("|", ">") and _BLOCK.match(line, at):
            self.skip_block(indent)
        elif first in ("'", '"'):
            self.skip_quoted(at)
        elif first in ("{", "["):
            self.flow(at)
        else:
            rest = line[at:].rstrip()
            if first != "#" and rest and _is_suspect(rest):
                self.found.append(Value(self.row + 1, at + 1, rest, line[:at]))
            self.row += 1

    def skip_block(self, indent: int) -> None:
        self.row += 1
        while self.row < len(self.lines):
            line = self.lines[self.row]
            if line.strip() and len(line) - len(line.lstrip()) <= indent:
                return
            self.row += 1

    def skip_quoted(self, at: int) -> None:
        quote = self.lines[self.row][at]
        self.close_quote(at + 1, quote)
        self.row += 1

    def close_quote(self, at: int, quote: str) -> int:
        """The index after the closing quote, moving down the lines; the end where it never closes."""
        while self.row < len(self.lines):
            if closed := _QUOTED[quote].match(self.lines[self.row], at):
                return closed.end()
            self.row, at = self.row + 1, 0
        self.row -= 1
        return len(self.lines[self.row])

    def flow(self, at: int) -> None:
        """Values inside braces and brackets, which may run over several lines."""
        depth, start = 0, self.row
        while self.row < len(self.lines) and self.row - start < 200:
            line = self.lines[self.row]
            while sign := _FLOW_SIGN.search(line, at):
                at, char = sign.start(), sign.group()
                if char == "#" and (at == 0 or line[at - 1] == " "):
                    break
                if char in "'\"" and _sign_before(line, at) in ("", ":", ",", "{", "["):
                    at = self.close_quote(at + 1, char)
                    line = self.lines[self.row]
                    continue
                depth += (char in "{[") - (char in "}]")
                at += 1
                if depth == 0:
                    self.row += 1
                    return
                if char in "{[,":
                    self.flow_value(line, at)
            self.row, at = self.row + 1, 0

    def flow_value(self, line: str, at: int) -> None:
        end = _FLOW_END.search(line, at)
        piece = line[at : end.start() if end else len(line)]
        at += len(piece) - len(piece.lstrip())
        piece = piece.strip()
        key = _KEY.match(piece + " ") if piece else None
        at, piece = (at + key.end(), piece[key.end() :]) if key and key.end() <= len(piece) else (at, piece)
        lead = len(piece) - len(piece.lstrip())
        piece = piece.strip()
        if piece and piece[0] not in "'\"" and _is_suspect(piece):
            self.found.append(Value(self.row + 1, at + lead + 1, piece, flow=True))


def _is_suspect(text: str) -> bool:
    return text[0] in _FIRST or _INSIDE.search(text) is not None


def _sign_before(line: str, at: int) -> str:
    """What stands before a place on a line, blanks aside; the line may be long, and is not copied."""
    while line[at - 1 : at].isspace():
        at -= 1
    return line[at - 1 : at] if at else ""
