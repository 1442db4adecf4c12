"""Bytes of an author's file to text, or the reason why not."""

import re
from itertools import islice

from generator.problems import Level, Location, Problem

MOST_BYTES = 2_000_000
# Control characters, signs that turn the reading direction, line separators that only some programs see,
# marks between texts, tags: none shows itself, and each makes a text read other than it is.
INVISIBLE = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028-\u202e\u2066-\u2069\ufeff\ufff9-\ufffb\ufffe\uffff"
    "\U000e0000-\U000e007f]"
)
_MERGE = re.compile(r"^(?:<{7}|>{7})(?: |$)", re.MULTILINE)
_OTHER_KINDS = (
    (b"\xff\xfe\x00\x00", "UTF-32"),
    (b"\xff\xfe", "UTF-16"),
    (b"\xfe\xff", "UTF-16"),
    (b"%PDF", "a PDF"),
    (b"PK\x03\x04", "a zip or an office document"),
    (b"\xd0\xcf\x11\xe0", "an office document"),
    (b"{\\rtf", "a word processor's text"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
)
_MOST_TOLD = 20
_TURNS = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
_SEPARATES = "\x85\u2028\u2029"


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
    if strange := _no_text(data, file):
        return "", (strange,)
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
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    if ("<<<<<<<" in text or ">>>>>>>" in text) and (mixed := _MERGE.search(text)):
        return "", (_merged(_place(file, text, mixed.start())),)
    if text.replace("\n", "").isprintable():
        return text, ()
    unseen = tuple(
        invisible(_place(file, text, found.start()), found.group())
        for found in islice(INVISIBLE.finditer(text), _MOST_TOLD)
    )
    return ("", unseen) if unseen else (text, ())


def _no_text(data: bytes, file: str) -> Problem | None:
    """A file of another kind, by what it begins with."""
    for start, kind in _OTHER_KINDS:
        if data.startswith(start):
            rule = "not-utf8" if kind.startswith("UTF") else "unreadable"
            return Problem(
                rule, Level.ERROR, Location(file), f"the file is {kind}, not text in UTF-8",
                "save it again as plain text with the encoding UTF-8, or take it out of this folder",
            )  # fmt: skip
    return None


def _merged(where: Location) -> Problem:
    return _unreadable(
        where,
        "two versions of the file are mixed: a mark of a merge that was not finished stands here",
        "keep one of the two versions, and delete the lines that begin with <<<<<<<, ======= and >>>>>>>",
    )


def invisible(where: Location, character: str) -> Problem:
    """The problem of a character that nobody sees, written as it is or as an escape in quotes."""
    what = "an invisible control character"
    if character in _TURNS:
        what = "an invisible sign that turns the reading direction"
    elif character in _SEPARATES:
        what = "a line separator that is no line end"
    return _unreadable(
        where,
        f"{what} (U+{ord(character):04X}) stands here",
        "delete it and type the words anew; copying from a PDF or a web page often brings such characters",
    )


def _place(file: str, text: str, index: int) -> Location:
    line = text.count("\n", 0, index) + 1
    return Location(file, line, index - (text.rfind("\n", 0, index) + 1) + 1)


def _unreadable(where: Location, message: str, fix: str) -> Problem:
    return Problem("unreadable", Level.ERROR, where, message, fix)
