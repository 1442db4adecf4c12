"""The scan of raw text before the parser: every slip of form at once, each with the line ready to paste."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from generator.problems import Level, Location, Problem

_KEY = re.compile(r"""(?P<key>"[^"]*"|'[^']*'|[^\s#"'{}\[\],:-][^#"'{}\[\]:]*?|-[^\s#"'{}\[\],:][^#"'{}\[\]:]*?):(?:\s+|$)""")
_BLOCK = re.compile(r"[|>][+-]?\d?[+-]?\s*(#.*)?$")
_OPENING = "\u201c\u201d\u201e\u2018\u2019\u00ab\u2039"
_CLOSING = "\u201c\u201d\u2018\u2019\u00bb\u203a"
_SIGN = re.compile(r"[><%@*&!`]|-(?!\d)")


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
    for number, line in enumerate(lines, 1):
        indent = line[: len(line) - len(line.lstrip())]
        if "\t" in indent and line.strip():
            yield _problem("tab-indent", Location(file, number, 1 + indent.index("\t")),
                           "the line is indented with a tab", f"use spaces: `{line.expandtabs(2).rstrip()}`")
    for value in _values(lines):
        yield from _look(value, file)


def _values(lines: list[str]) -> Iterator[_Value]:
    """Plain values in block lines and inside braces; quoted text and block sentences are passed over."""
    reader = _Lines(lines)
    while reader.row < len(lines):
        yield from reader.step()


class _Lines:
    """A cursor over the lines that knows when it is inside a block sentence, quotes or braces."""

    def __init__(self, lines: list[str]) -> None:
        self.lines = lines
        self.row = 0

    def step(self) -> Iterator[_Value]:
        line = self.lines[self.row]
        indent = len(line) - len(line.lstrip())
        at = indent
        while line.startswith("- ", at):
            at += 2 + len(line[at + 2 :]) - len(line[at + 2 :].lstrip())
        if at >= len(line) or line[at] == "#":
            self.row += 1
            return
        key = _KEY.match(line, at)
        at = key.end() if key else at
        yield from self.value(line, at, indent)

    def value(self, line: str, at: int, indent: int) -> Iterator[_Value]:
        rest = line[at:]
        if _BLOCK.match(rest):
            self.skip_block(indent)
        elif rest[:1] in ("'", '"'):
            self.skip_quoted(at)
        elif rest[:1] in ("{", "["):
            yield from self.flow(at)
        else:
            if rest.strip() and not rest.startswith("#"):
                yield _Value(self.row + 1, at + 1, rest.rstrip(), line[:at])
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
        """The index after the closing quote, moving down the lines; the end of the text where it never closes."""
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

    def flow(self, at: int) -> Iterator[_Value]:
        """Values inside braces and brackets, which may run over several lines."""
        depth, start = 0, self.row
        while self.row < len(self.lines) and self.row - start < 200:
            line = self.lines[self.row]
            while at < len(line):
                char = line[at]
                if char == "#" and (at == 0 or line[at - 1] == " "):
                    break
                if char in "'\"" and line[:at].rstrip()[-1:] in ("", ":", ",", "{", "["):
                    at = self.close_quote(at + 1, char)
                    line = self.lines[self.row]
                    continue
                depth += (char in "{[") - (char in "}]")
                if depth == 0:
                    self.row += 1
                    return
                if char in "{[,":
                    yield from self.flow_value(line, at + 1)
                at += 1
            self.row, at = self.row + 1, 0

    def flow_value(self, line: str, at: int) -> Iterator[_Value]:
        end = next((i for i in range(at, len(line)) if line[i] in ",}]{["), len(line))
        piece = line[at:end]
        at += len(piece) - len(piece.lstrip())
        piece = piece.strip()
        key = _KEY.match(piece + " ") if piece else None
        at, piece = (at + key.end(), piece[key.end() :]) if key and key.end() <= len(piece) else (at, piece)
        lead = len(piece) - len(piece.lstrip())
        piece = piece.strip()
        if piece and piece[0] not in "'\"":
            yield _Value(self.row + 1, at + lead + 1, piece, line[: at + lead], flow=True)


def _look(value: _Value, file: str) -> Iterator[Problem]:
    where = Location(file, value.line, value.column, max(1, len(value.text)))
    text = _without_comment(value.text)
    if text[:1] in _OPENING and text[-1:] in _CLOSING and len(text) > 1:
        yield _problem("smart-quote", where, "typographic quotes are used where YAML needs straight ones",
                       _paste(value, text.strip(_OPENING + _CLOSING)))
        return
    if _SIGN.match(text):
        yield _problem("yaml-sign", where, f"the value begins with {text[0]}, which is a sign of YAML and not text",
                       _sign_fix(value, text))
        return
    cut = _cut(value.text)
    if cut:
        yield _problem("text-cut", Location(file, value.line, value.column + cut, len(value.text) - cut),
                       f'the text is cut before "{value.text[cut:]}": a # after a space starts a comment',
                       _paste(value, value.text) + "; a comment stands two spaces behind the value")
    elif ": " in text or (text.endswith(":") and not value.flow and value.before.strip(" -")):
        yield _problem("colon-in-sentence", where, "a colon followed by a space stands inside a sentence without quotes",
                       _paste(value, text))


def _without_comment(text: str) -> str:
    return re.split(r"\s+#", text, maxsplit=1)[0].rstrip()


def _cut(text: str) -> int:
    """Where the author's own text goes on behind ` #`, or 0: glued to a word, or one space behind a sentence."""
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
