"""Readers for one field each: text, ids, quantities and windows, refused with a fix where they do not fit."""

import datetime
import re
from collections.abc import Callable, Mapping
from difflib import get_close_matches
from typing import Annotated, Any

from pydantic_core import PydanticCustomError

from generator.model.located import MARKS, WHERE, Text
from generator.model.missing_unit import fix_of
from generator.model.reader import Before, Reader
from generator.units import (
    Clock,
    Counted,
    Dimension,
    Quantity,
    UnitsError,
    Window,
    read_clock,
    read_counted,
    read_date,
    read_numbers_window,
    read_quantity,
    read_window,
)

_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_LANGUAGE = re.compile(r"[a-z]{2,3}(-[A-Za-z0-9]{2,8}){0,3}")
DEVICES = {"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))}
LONGEST_TEXT = 2_000
_MEANT = {"yes": "true", "on": "true", "y": "true", "no": "false", "off": "false", "n": "false"}


def refuse(rule: str, message: str, fix: str) -> PydanticCustomError:
    """The error that the reading floor turns into a problem of that rule at this field's place."""
    safe = message.replace("{", "(").replace("}", ")")
    return PydanticCustomError(rule, "{message}", {"message": safe, "fix": fix})


def text(value: object) -> Text:
    """Any words of the author, up to 2,000 characters."""
    if type(value) is Text and 0 < len(value) <= LONGEST_TEXT and not value.isspace():
        return value  # as nearly all of the many hundred in a file are
    if not isinstance(value, str):
        raise refuse(*_not_text(value))
    if not value or value.isspace():
        raise refuse("required-missing", "the field is there but empty", "write a value, or delete the line")
    if len(value) > LONGEST_TEXT:
        raise refuse(
            "unreadable", f"the text has {len(value)} characters, more than {LONGEST_TEXT}", "shorten it"
        )
    return value if isinstance(value, Text) else Text(value)


def _not_text(value: object) -> tuple[str, str, str]:
    if isinstance(value, Mapping):
        names = [str(key) for key in value if key not in (WHERE, MARKS)]
        if len(names) == 1 and " " in names[0]:
            return (
                "colon-in-sentence",
                f'a sentence with a colon after "{names[0]}" stands without quotes',
                f'put the whole sentence in straight double quotes: "{names[0]}: ..."',
            )
        return ("unreadable", "a sentence is expected here, but fields are written", "write one sentence")
    return ("unreadable", "one value is expected here, but a list is written", "write one, without brackets")


def an_id(value: object) -> Text:
    """An id: lower-case words with hyphens; no name that a file system keeps for itself."""
    word = text(value)
    if not _ID.fullmatch(word) or len(word) > 60:
        wish = re.sub(r"[^a-z0-9]+", "-", word.lower()).strip("-")[:60]
        raise refuse(
            "unreadable",
            f'"{word[:60]}" is no id: ids are lower-case words with hyphens',
            f"write `{wish}`" if wish else "choose a short word",
        )
    if word in DEVICES:
        raise refuse("unreadable", f'"{word}" is a device name on some computers', f"write `{word}-1`")
    return word


def a_language(value: object) -> Text:
    """A language as a web page names it (BCP 47): two or three small letters, then parts behind hyphens."""
    word = text(value)
    if not _LANGUAGE.fullmatch(word):
        raise refuse("unreadable", f'"{word[:60]}" is no language code', "write for example `en` or `pt-BR`")
    return word


def a_flag(value: object) -> bool:
    """`true` or `false`, nothing else."""
    if value in ("true", "false"):
        return value == "true"
    meant = _MEANT.get(str(value).lower())
    raise refuse(
        "unreadable",
        f'true or false is expected, but "{value}" is written',
        f"write `{meant}`" if meant else "write `true` or `false`",
    )


def a_count(value: object) -> int:
    """A whole number from 0 to 99,999."""
    if isinstance(value, str) and re.fullmatch(r"\d{1,5}", value):
        return int(value)
    raise refuse(
        "unreadable", f'a whole number is expected, but "{value}" is written', "write for example `2`"
    )


def at_least_one(value: object) -> int:
    """A whole number from 1 to 99,999: none at all is said by leaving the field out."""
    number = a_count(value)
    if number == 0:
        raise refuse("unreadable", "0 would be never, or nobody", "write `1` or more, or delete the field")
    return number


def some(value: object) -> Counted:
    """A count of at least one and a word."""
    found: Counted = units_reader(read_counted)(value)
    if found.number == 0:
        raise refuse("unreadable", f"0 {found.word} would be none", "write `1` or more, or delete the field")
    return found


class OneOf(Reader):
    """A field that takes one word of a closed list; editors offer the list."""

    def __init__(self, *words: str, kind: str) -> None:
        super().__init__(self.word, type="string", enum=list(words))
        self.words = words
        self.kind = kind

    def word(self, value: object) -> str:
        """The word as written; refused with the nearest one."""
        word = text(value)
        if word in self.words:
            return word
        near = get_close_matches(word, self.words, 1)
        hint = f"did you mean `{near[0]}`? " if near else ""
        raise refuse(
            "unknown-name", f'"{word}" is no {self.kind}', f"{hint}write one of: {', '.join(self.words)}"
        )


def units_reader(
    read: Callable[[str], Any], dimensions: tuple[Dimension, ...] = ()
) -> Callable[[object], Any]:
    """A reader for quantities or windows of one of these dimensions (any, where none is given)."""

    def get(value: object) -> Any:
        words = text(value)
        try:
            found = read(words)
        except UnitsError as bad:
            raise refuse(bad.rule, bad.message, fix_of(bad, dimensions)) from None
        if dimensions and found.dimension not in dimensions:
            wanted = " or ".join(dimension.name for dimension in dimensions)
            raise refuse(
                "unit-missing",
                f'"{words}" is a {found.dimension.name}, but a {wanted} is expected here',
                f"write a {wanted} with its unit",
            )
        if dimensions == (TIME,) and isinstance(found, Quantity) and found.number < 0:
            raise refuse("unit-missing", f'"{words}" is less than no time', f"write {words.lstrip('-−')}")
        return found

    return get


def listed(value: object) -> object:
    """A list as a tuple; a single word where a list belongs is refused with the fix."""
    if isinstance(value, list | tuple):
        return tuple(value)
    if isinstance(value, str):
        text(value)
        words = re.split(r",? and |, ?", value)
        ids = len(words) > 1 and all(map(_ID.fullmatch, words))
        said = "its brackets are not there" if ids else "one word is written"
        fix = f"write `[{', '.join(words) if ids else value}]`"
        raise refuse("unreadable", f"a list is expected here, but {said}", fix)
    raise refuse(
        "unreadable", "a list is expected here", "write `[first, second]` or lines that start with `- `"
    )


def named(value: object) -> object:
    """A free mapping (author's own names) without the places that the reader adds."""
    if not isinstance(value, Mapping):
        raise refuse("unreadable", "names with values are expected here", "write `{name: value}`")
    return {key: inner for key, inner in value.items() if key not in (WHERE, MARKS)}


def _leaf(read: Callable[[object], Any], description: str, **more: Any) -> Reader:
    return Reader(read, **{"type": "string", "description": description, **more})


def _dimension(example: str) -> Dimension:
    return read_quantity(example).dimension


TIME = _dimension("1 s")
Sentence = Annotated[Text, _leaf(text, "words", type=["string", "number", "boolean"])]
Id = Annotated[Text, _leaf(an_id, "lower-case words with hyphens", pattern="^[a-z0-9]+(-[a-z0-9]+)*$")]
Language = Annotated[Text, _leaf(a_language, "a language code, as en or pt-BR")]
Ref = Annotated[Text, _leaf(text, "the id of something declared elsewhere")]
Name = Annotated[str, _leaf(text, "a name of the author's own")]
Flag = Annotated[bool, Reader(a_flag, type=["boolean", "string"])]
Count = Annotated[int, Reader(a_count, type=["integer", "string"])]
Positive = Annotated[int, Reader(at_least_one, type=["integer", "string"])]
Amount = Annotated[Quantity, _leaf(units_reader(read_quantity), "a number and a unit, as 1.9 A/dm2")]
Span = Annotated[Quantity, _leaf(units_reader(read_quantity, (TIME,)), "a time, as 8 min")]
Limits = Annotated[
    Window, _leaf(units_reader(read_window), "a window, as 6 to 10 min, up to 8 min, at least 90 s")
]
SpanLimits = Annotated[Window, _leaf(units_reader(read_window, (TIME,)), "a window of time, as 6 to 10 min")]
Temperatures = Annotated[
    Window, _leaf(units_reader(read_window, (_dimension("20 degC"),)), "a window, as 42 to 48 degC")
]
Length = Annotated[Quantity, _leaf(units_reader(read_quantity, (_dimension("1 m"),)), "a length, as 1.5 m")]
Volume = Annotated[Quantity, _leaf(units_reader(read_quantity, (_dimension("1 L"),)), "a volume, as 18 L")]
Density = Annotated[
    Quantity, _leaf(units_reader(read_quantity, (_dimension("1 kg/L"),)), "a density, as 1.84 kg/L")
]
Viscosity = Annotated[
    Quantity,
    _leaf(units_reader(read_quantity, (_dimension("1 mm2/s"),)), "a kinematic viscosity, as 20 mm2/s"),
]
Current = Annotated[Quantity, _leaf(units_reader(read_quantity, (_dimension("1 A"),)), "a current, as 12 A")]
Ph = Annotated[
    object,
    _leaf(units_reader(read_numbers_window), "a window of pH, as 9.5 to 10.4", type=["number", "string"]),
]
Times = Annotated[Counted, _leaf(some, "a count and a word, as 4 points")]
ClockTime = Annotated[Clock, _leaf(units_reader(read_clock), "a time of day, as 13:10")]
Day = Annotated[datetime.date, _leaf(units_reader(read_date), "a day, as 2026-06-03")]
Listed = Before(listed)
Named = Before(named)
Sentences = Annotated[tuple[Sentence, ...], Listed]
Refs = Annotated[tuple[Ref, ...], Listed]
