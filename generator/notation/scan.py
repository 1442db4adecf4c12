"""The scan of raw text before the parser: every slip of form at once, each with the line ready to paste."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from generator.problems import Level, Location, Problem

_KEY = re.compile(
    r"""("[^"]*"|'[^']*'|[^\s#"'{}\[\],:-][^#"'{}\[\]:]*+|-[^\s#"'{}\[\],:][^#"'{}\[\]:]*+):(?:\s+|$)"""
)
_BLOCK = re.compile(r"[|>][+-]?\d?[+-]?\s*(#.*)?$")
_OPENING = "\u201c\u201d\u201e\u2018\u2019\u00ab\u2039"
_CLOSING = "\u201c\u201d\u2018\u2019\u00bb\u203a"
_SIGN = re.compile(r"[><%@*&!`]|-(?!\d)")
_START = re.compile(r"(\s*)(?:- \s*)*")
_DIVIDER = re.compile(r"(?:---|\.\.\.)\s*(?:#.*)?$")
_FLOW_SIGN = re.compile(r"""[{}\[\],'"#]""")
_FLOW_END = re.compile(r"[,}\]{\[]")
# Few values can be a slip: those that begin with a sign, or hold what ends a value for YAML.
_FIRST = frozenset(_OPENING + "><%@*&!`-")
_INSIDE = re.compile(r"\s#|: |:$")


@dataclass(frozen=True, slots=True)
class _Value:
    """A plain scalar on one line: where it starts, its whole text with all that follows on the line."""

    line: int
    column: int
    text: str
    before: str
    flow: bool = False


def scan(text: str, file: str) -> Iterator[Problem]:
    """All slips of form in the raw text, in order."""
    lines = text.split("\n")
    if "\t" in text:
        yield from _tabs(lines, file)
    for value in _values(lines):
        yield from _look(value, file)


def _tabs(lines: list[str], file: str) -> Iterator[Problem]:
    for number, line in enumerate(lines, 1):
        indent = line[: len(line) - len(line.lstrip())]
        if "\t" in indent and line.strip():
            yield _problem(
                "tab-indent",
                Location(file, number, 1 + indent.index("\t")),
                "the line is indented with a tab",
                f"use spaces: `{line.expandtabs(2).rstrip()}`",
            )


def _values(lines: list[str]) -> list[_Value]:
    """Plain values that may be slips, of block lines and inside braces; no quoted text, no block text."""
    reader = _Lines(lines)
    while reader.row < len(lines):
        reader.step()
    return reader.found


class _Lines:
    """A cursor over the lines that knows when it is inside a block sentence, quotes or braces."""

    def __init__(self, lines: list[str]) -> None:
        self.lines = lines
        self.row = 0
        self.found: list[_Value] = []

    def step(self) -> None:
        line = self.lines[self.row]
        start = _START.match(line)
        assert start is not None
        at = start.end()
        if at >= len(line) or line[at] == "#" or (line[0] in "-." and _DIVIDER.match(line)):
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
                self.found.append(_Value(self.row + 1, at + 1, rest, line[:at]))
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
            line = self.lines[self.row]
            while at < len(line):
                if line[at] == "\\" and quote == '"':
                    at += 2
                elif line[at] == quote and not (quote == "'" and line.startswith("''", at)):
                    return at + 1
                else:
                    at += 2 if line.startswith("''", at) and quote == "'" else 1
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
                if char in "'\"" and line[:at].rstrip()[-1:] in ("", ":", ",", "{", "["):
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
            self.found.append(_Value(self.row + 1, at + lead + 1, piece, line[: at + lead], flow=True))


def _is_suspect(text: str) -> bool:
    return text[0] in _FIRST or _INSIDE.search(text) is not None


def _look(value: _Value, file: str) -> Iterator[Problem]:
    where = Location(file, value.line, value.column, max(1, len(value.text)))
    text = _without_comment(value.text)
    if text[:1] in _OPENING and text[-1:] in _CLOSING and len(text) > 1:
        yield _problem(
            "smart-quote",
            where,
            "typographic quotes are used where YAML needs straight ones",
            _paste(value, text.strip(_OPENING + _CLOSING)),
        )
        return
    if _SIGN.match(text):
        yield _problem(
            "yaml-sign",
            where,
            f"the value begins with {text[0]}, which is a sign of YAML and not text",
            _sign_fix(value, text),
        )
        return
    cut = _cut(value.text)
    if cut:
        yield _problem(
            "text-cut",
            Location(file, value.line, value.column + cut, len(value.text) - cut),
            f'the text is cut before "{value.text[cut:]}": a # after a space starts a comment',
            _paste(value, value.text) + "; a comment stands two spaces behind the value",
        )
    elif ": " in text or (text.endswith(":") and not value.flow and value.before.strip(" -")):
        yield _problem(
            "colon-in-sentence",
            where,
            "a colon followed by a space stands inside a sentence without quotes",
            _paste(value, text),
        )


def _without_comment(text: str) -> str:
    return re.split(r"\s+#", text, maxsplit=1)[0].rstrip()


def _cut(text: str) -> int:
    """Where the author's text goes on behind ` #`, or 0: glued to a word, or one space behind a sentence."""
    found = re.search(r"(\s+)#", text)
    if not found or not found.start():
        return 0
    follows = text[found.end() : found.end() + 1]
    sentence = len(text[: found.start()].split()) >= 3 and len(found.group(1)) == 1
    glued = follows not in ("", " ", "#") and len(found.group(1)) == 1
    return found.start() if sentence or glued else 0


def _quoted(text: str) -> str:
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def _paste(value: _Value, text: str) -> str:
    lead = "" if value.flow else value.before.lstrip()
    return f"write `{lead}{_quoted(text)}`"


def _sign_fix(value: _Value, text: str) -> str:
    limit = {">": "at least", "<": "up to"}.get(text[0])
    rest = text[1:].lstrip("= ")
    if limit and rest[:1].isdigit():
        return f"write `{'' if value.flow else value.before.lstrip()}{limit} {rest}`"
    return _paste(value, text)


def _problem(rule: str, where: Location, message: str, fix: str) -> Problem:
    return Problem(rule, Level.ERROR, where, message, fix)
