"""Quantities written inside sentences, in digits or in words, and the fields where they belong."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache, lru_cache

from generator.model import Place, Step
from generator.units import UNITS, Quantity, UnitsError, Window, find_unit, read_quantity

_NUMBER = re.compile(
    r"(?<![\w.,])(?P<low>\d+(?:[.,]\d+)?)(?:\s*(?:to|-|\u2013|\u2212)\s*(?P<high>\d+(?:[.,]\d+)?))?\s*"
)
_IN_DIGITS = {
    "half": "0.5", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7",
    "eight": "8", "nine": "9", "ten": "10", "twelve": "12", "fifteen": "15", "twenty": "20", "thirty": "30",
    "forty": "40", "fifty": "50", "sixty": "60", "ninety": "90", "hundred": "100",
}  # fmt: skip
_DIGIT = re.compile(r"\d")
_COUNTED = re.compile(
    rf"\b(?P<count>{'|'.join(_IN_DIGITS)}) (?:an? )?(?=(?P<rest>[a-z]+(?: [a-z]+)?)\b)", re.IGNORECASE
)
_LEAD = r"(?:\s*\b(?:for|at|in|to|of|about|around|up to|at least)\s+)(?:the\s+)?$"
# Counted things are no quantities here, and "in" after a number is far more often the word than the inch.
_NOT_MEANT = frozenset({"", "boards", "pieces", "holes", "parts"})
_WORDS_NOT_UNITS = frozenset({"in", "a", "an", "as", "at", "t", "d", "M"})
_FIELDS = {
    "time": "the time stands in `for`",
    "temperature": "the temperature stands on the place, or in `set`",
    "current": "the current stands in `power`",
    "mass": "the amount stands in `use`",
    "volume": "the amount stands in `use`",
}


@dataclass(frozen=True, slots=True)
class Mention:
    """A piece of a sentence: text, start, quantity where it is one; `alarm` for a timer's name."""

    text: str
    start: int
    value: Quantity | None
    alarm: bool = False


@lru_cache(maxsize=4096)
def mentions(text: str) -> tuple[Mention, ...]:
    """Every quantity in a sentence: digits or a number word with a unit of the table."""
    return tuple(_mentions(text))


def _mentions(text: str) -> Iterator[Mention]:
    for match in _NUMBER.finditer(text) if _DIGIT.search(text) else ():
        unit = _unit_after(text[match.end() :])
        if unit:
            end = match.end() + len(unit)
            yield Mention(
                text[match.start() : end], match.start(), _value(match["high"] or match["low"], unit)
            )
    for match in _COUNTED.finditer(text):
        rest = match["rest"]
        unit = next((word for word in (rest, rest.partition(" ")[0]) if word.lower() in _spelt()), "")
        if unit:
            words = text[match.start() : match.end() + len(unit)]
            yield Mention(words, match.start(), _value(_IN_DIGITS[match["count"].lower()], unit))


@cache
def _spelt() -> frozenset[str]:
    """The units spelt out, of one word or two."""
    words = {word for unit in UNITS.values() if unit.symbol not in _NOT_MEANT for word in unit.spellings}
    return frozenset({"degrees", *(word for word in words if re.fullmatch(r"[a-z]{3,}( [a-z]+)?", word))})


def _unit_after(rest: str) -> str:
    """The text of the longest unit at the start of what follows a number, or an empty text."""
    words = re.match(r"\S+(?: \S+){0,2}", rest)
    pieces = words.group().split(" ") if words else []
    for count in range(len(pieces), 0, -1):
        text = " ".join(pieces[:count]).rstrip(".,;:!?)\u201d\"'")
        if text in _WORDS_NOT_UNITS:
            continue
        if text == "C" or (find_unit(text) or "") not in _NOT_MEANT:
            return text
    return ""


def _value(number: str, unit: str) -> Quantity | None:
    unit = {"C": "degC", "degrees": "degC"}.get(unit, unit)
    try:
        return read_quantity(f"{number.replace(',', '.')} {unit}")
    except UnitsError:
        return None


def without(text: str, found: Iterable[Mention]) -> str:
    """The sentence without these pieces and the small word before each; empty where it would be none."""
    kept = text
    for mention in sorted(found, key=lambda mention: -mention.start):
        before = kept[: mention.start]
        lead = re.search(_LEAD, before, re.IGNORECASE)
        if lead is None or mention.alarm:
            return ""
        kept = before[: lead.start()] + kept[mention.start + len(mention.text) :]
    kept = re.sub(r"\s+([.,;:!?])", r"\1", re.sub(r"\s+", " ", kept)).strip()
    return kept if re.search(r"\w", kept) else ""


def fields_of(found: Iterable[Mention], *, at_place: bool) -> str:
    """Where the pieces belong, as one clause."""
    return ", ".join(dict.fromkeys(_field(mention, at_place) for mention in found))


def _field(mention: Mention, at_place: bool) -> str:
    if mention.alarm:
        return "the timer stands in `alarm`, or on the place"
    if mention.value is None:
        return "the number stands on the place that `at` names"
    name = mention.value.dimension.name
    if at_place and name in ("time", "temperature"):
        return f"the {name} stands in `{name}` of the place"
    return _FIELDS.get(name, "the number stands in a field of its own, such as `record` or `set`")


def step_values(step: Step) -> tuple[Quantity, ...]:
    """The quantities that the fields of a step hold."""
    power = step.power.to if step.power else None
    given = (step.for_, step.takes, power, *step.use.values())
    windows = [reading.limit for reading in step.record.values()] + ([step.since.time] if step.since else [])
    settings = tuple(_setting(str(text)) for text in step.set.values() if isinstance(text, str))
    found = [value for value in (*given, *settings) if isinstance(value, Quantity)]
    return (*found, *(edge for window in windows for edge in _edges(window)))


def _setting(text: str) -> Quantity | None:
    try:
        return read_quantity(text)
    except UnitsError:
        return None


def place_values(place: Place | None) -> tuple[Quantity, ...]:
    """The quantities that a place holds."""
    if place is None:
        return ()
    most = (place.power.most,) if place.power and place.power.most else ()
    return (*_edges(place.time), *_edges(place.temperature), *most)


def _edges(window: Window | None) -> Iterator[Quantity]:
    if window:
        yield from (edge for edge in (window.low, window.high) if edge is not None)
