"""The scan of raw text before the parser: every slip of form at once, each with the line ready to paste."""

import re
from collections.abc import Iterator

from generator.notation.raw_values import OPENING, Value, plain_values
from generator.problems import Level, Location, Problem

_CLOSING = "\u201c\u201d\u2018\u2019\u00bb\u203a"
_SIGN = re.compile(r"[><%@*&!`]|-(?!\d)")


def scan(text: str, file: str) -> Iterator[Problem]:
    """All slips of form in the raw text, in order."""
    lines = text.split("\n")
    if "\t" in text:
        yield from _tabs(lines, file)
    for value in plain_values(lines):
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


def _look(value: Value, file: str) -> Iterator[Problem]:
    where = Location(file, value.line, value.column, max(1, len(value.text)))
    text = _without_comment(value.text)
    if text[:1] in OPENING and text[-1:] in _CLOSING and len(text) > 1:
        yield _problem(
            "smart-quote",
            where,
            "typographic quotes are used where YAML needs straight ones",
            _paste(value, text.strip(OPENING + _CLOSING)),
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


def _paste(value: Value, text: str) -> str:
    lead = "" if value.flow else value.before.lstrip()
    return f"write `{lead}{_quoted(text)}`"


def _sign_fix(value: Value, text: str) -> str:
    limit = {">": "at least", "<": "up to"}.get(text[0])
    rest = text[1:].lstrip("= ")
    if limit and rest[:1].isdigit():
        return f"write `{'' if value.flow else value.before.lstrip()}{limit} {rest}`"
    return _paste(value, text)


def _problem(rule: str, where: Location, message: str, fix: str) -> Problem:
    return Problem(rule, Level.ERROR, where, message, fix)
