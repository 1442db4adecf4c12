"""Clock times and dates as written in a lab's files."""

import datetime
import re

from generator.units.errors import UnitsError
from generator.units.mending import short
from generator.units.quantity import Clock

_CLOCK = r"([0-9]{1,2}):([0-9]{2})"
_LOOSE_CLOCK = r"(?i)([0-9]{1,2})[:.h]?([0-9]{2})?(?::[0-9]{2})? ?(am|pm|a\.m\.|p\.m\.|h)?"
_DATE = r"([0-9]{4})-([0-9]{2})-([0-9]{2})"
_YEAR_FIRST = r"([0-9]{4})[-/. ]([0-9]{1,2})[-/. ]([0-9]{1,2})"
_YEAR_LAST = r"([0-9]{1,2})[-/. ]([0-9]{1,2})[-/. ]([0-9]{4})"


def read_clock(text: str) -> Clock:
    """A time of day on the 24-hour clock, such as "16:40". UnitsError otherwise."""
    match = re.fullmatch(_CLOCK, text.strip())
    if match and (clock := _clock(int(match[1]), int(match[2]))):
        return clock
    message = f"`{short(text)}` is no time of day on the 24-hour clock"
    raise UnitsError("unit-missing", message, f"write {_meant_clock(text.strip()) or 'it as 16:40'}")


def _clock(hours: int, minutes: int) -> Clock | None:
    inside = minutes < 60 and (hours < 24 or (hours, minutes) == (24, 0))
    return Clock(60 * hours + minutes) if inside else None


def _meant_clock(text: str) -> str | None:
    match = re.fullmatch(_LOOSE_CLOCK, text)
    if match is None:
        return None
    hours, minutes, half = int(match[1]), int(match[2] or 0), (match[3] or "").lower()
    if half.startswith(("a", "p")):
        if not 1 <= hours <= 12:
            return None
        hours = hours % 12 + (12 if half.startswith("p") else 0)
    clock = _clock(hours, minutes)
    return str(clock) if clock else None


def read_date(text: str) -> datetime.date:
    """A day written year first, such as "2026-06-03". UnitsError otherwise."""
    match = re.fullmatch(_DATE, text.strip())
    if match and (day := _day(int(match[1]), int(match[2]), int(match[3]))):
        return day
    message = f"`{short(text)}` is no date"
    if match:
        message = f"`{short(text)}` is no day of the calendar"
        raise UnitsError("unit-missing", message, "look the day up again")
    raise UnitsError("unit-missing", message, f"write it year first, as {_meant_date(text.strip())}")


def _day(year: int, month: int, day: int) -> datetime.date | None:
    try:
        return datetime.date(year, month, day)
    except ValueError:
        return None


def _meant_date(text: str) -> str:
    first = re.fullmatch(_YEAR_FIRST, text)
    if first and (day := _day(int(first[1]), int(first[2]), int(first[3]))):
        return day.isoformat()
    last = re.fullmatch(_YEAR_LAST, text)
    if last is None:
        return "2026-06-03"
    year, one, two = int(last[3]), int(last[1]), int(last[2])
    days = dict.fromkeys(day.isoformat() for m, d in ((two, one), (one, two)) if (day := _day(year, m, d)))
    return " or ".join(days) or "2026-06-03"
