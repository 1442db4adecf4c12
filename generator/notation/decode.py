"""Bytes of an author's file to text, or the reason why not."""

import re

from generator.problems import Level, Location, Problem

MOST_BYTES = 2_000_000
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\x80-\x84\x86-\x9f\ufffe\uffff]")


def decode(data: bytes, file: str) -> tuple[str, tuple[Problem, ...]]:
    """UTF-8 text without its byte-order mark; an empty text and a problem where it cannot be read."""
    if len(data) > MOST_BYTES:
        return "", (
            _unreadable(
                Location(file),
                f"the file is larger than {MOST_BYTES // 1_000_000} MB",
                "split it: one procedure a file, pictures in their own files",
            ),
        )
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as bad:
        before = data[: bad.start]
        line = before.count(b"\n") + 1
        column = bad.start - (before.rfind(b"\n") + 1) + 1
        return "", (
            Problem(
                "not-utf8",
                Level.ERROR,
                Location(file, line, column),
                f"byte {data[bad.start]:#04x} is not UTF-8 text",
                "save the file again with the encoding UTF-8",
            ),
        )
    control = _CONTROL.search(text)
    if control:
        return "", (
            _unreadable(
                _place(file, text, control.start()),
                f"an invisible control character (U+{ord(control.group()):04X}) stands here",
                "delete it; copying from a PDF often brings such characters",
            ),
        )
    return text.replace("\r\n", "\n").replace("\r", "\n"), ()


def _place(file: str, text: str, index: int) -> Location:
    line = text.count("\n", 0, index) + 1
    return Location(file, line, index - (text.rfind("\n", 0, index) + 1) + 1)


def _unreadable(where: Location, message: str, fix: str) -> Problem:
    return Problem("unreadable", Level.ERROR, where, message, fix)
