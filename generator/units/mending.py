"""What to say, and what to write instead, when a text is no quantity."""

import re

from generator.units.errors import UnitsError
from generator.units.spelling import find_unit, nearest_unit, normalise

LONGEST = 120

_N = r"[+-]?[0-9]+(?:\.[0-9]+)?"
_COMMA = r"([0-9]+),([0-9]+)"
_THOUSANDS = r"(?<![0-9])[0-9]{1,3}(?:,[0-9]{3})+(?![0-9])"
_DASHED = rf"({_N}) ?(?:[-\u2010-\u2015~]|\.\.+|\u2026|and) ?({_N})(?: (.+)|([^0-9\s.,].*))?"
_SPREAD = rf"({_N}) \+/- ({_N}) ?(.+)"
_LIMIT = (
    r"(?i)(?:(?P<high><=?|\u2264|max\.?|maximum|at most|not above|less than|below|under)|"
    r"(?:>=?|\u2265|min\.|minimum|not below|more than|above|over)) ?(?P<value>[0-9].*)"
)
_ABOUT = r"(?i)(?:~|\u2248|about|approx\.?|approximately|around|ca\.?|circa) ?([0-9].*)"
_TWO_PARTS = rf"({_N}) ?(h|hrs?|hours?|mins?|minutes?) ?({_N}) ?(mins?|minutes?|s|secs?|seconds?)"
_COLON = r"([0-9]{1,2}):([0-5][0-9])"
_LETTER_O = r"(?<=[0-9])[oO](?=[0-9oO .]|$)"
_SPACED = r"[0-9]{1,3}(?: [0-9]{3})+(?![0-9])"


def short(text: str) -> str:
    """The text as quoted in a message: no line breaks, 40 characters at most."""
    text = " ".join(text.split())
    return text if len(text) <= 40 else text[:40] + "..."


def refuse_value(plain: str, text: str, expected: str) -> UnitsError:
    """The error for a text that is no value with a unit; `expected` says what was looked for."""
    if re.fullmatch(_N, plain):
        return UnitsError("unit-missing", f"`{short(text)}` has no unit", ask_for_unit(plain, "min"), plain)
    if not plain:
        return _error("a quantity is expected and nothing is written", f"write {expected}")
    fix = _meant(plain, text)
    if fix:
        return _error(f"`{short(text)}` cannot be read as a quantity", f"write {fix}")
    return _error(f"`{short(text)}` is no quantity", f"write {expected}")


def ask_for_unit(number: str, unit: str) -> str:
    """What to write where a number stands without its unit."""
    return f"write the unit after the number, such as {number} {unit}"


def refuse_number(plain: str, text: str) -> UnitsError:
    """The error for a text that is no plain number, where one is expected."""
    fix = _meant(plain, text)
    if fix:
        return _error(f"`{short(text)}` cannot be read as a number", f"write {fix}")
    return _error(f"`{short(text)}` is no number", "write digits with a decimal point, such as 9.5")


def refuse_unit(unit: str, number: str, text: str) -> UnitsError:
    """The error for a unit that our table lacks, with the nearest one that it has."""
    plain = normalise(text)
    if " to " in f" {unit} ":
        return _error(f"`{short(text)}` is a window, and one value is expected here", "write one value")
    mended = _mended(plain) if plain else None
    if mended:
        return _error(f"`{short(text)}` cannot be read as a quantity", f"write {mended}")
    near = nearest_unit(unit) if len(unit) <= 30 else None
    message = f"`{short(unit)}` is no unit that this lab's tools know"
    if near is None:
        return _error(message, "write an SI unit such as min, mm, g/L or degC")
    return _error(f"{message}; did you mean {near}?", f"write {number} {near}".replace("  ", " "))


def _error(message: str, fix: str) -> UnitsError:
    return UnitsError("unit-missing", message, fix)


def _meant(plain: str, text: str) -> str | None:
    """The whole text mended, or else the part of it that could not be read."""
    return _mended(normalise(text)) or _mended(plain)


def _mended(plain: str) -> str | None:
    """The text as it was most likely meant, or None when that is anybody's guess."""
    for mend in (
        _thousands,
        _comma,
        _limit,
        _about,
        _spread,
        _dashed,
        _two_parts,
        _colon,
        _letter_o,
        _spaced,
        _bare_point,
    ):
        meant = mend(plain)
        if meant:
            return meant
    return None


def _thousands(plain: str) -> str | None:
    match = re.search(_THOUSANDS, plain)
    if match is None:
        return None
    whole, point = match[0].replace(",", ""), match[0].replace(",", ".")
    rest = plain[match.end() :]
    if match[0].count(",") > 1:
        return f"{whole}{rest}"
    return f"{whole}{rest} if a thousand is meant, or {point}{rest}"


def _comma(plain: str) -> str | None:
    mended = re.sub(_COMMA, r"\1.\2", plain)
    return None if mended == plain else (_mended(mended) or mended)


def _limit(plain: str) -> str | None:
    match = re.fullmatch(_LIMIT, plain)
    if match is None:
        return None
    return f"{'up to' if match['high'] else 'at least'} {_tidy(match['value'])}"


def _about(plain: str) -> str | None:
    match = re.fullmatch(_ABOUT, plain)
    return f"{_tidy(match[1])} alone, or the window that still works" if match else None


def _spread(plain: str) -> str | None:
    match = re.fullmatch(_SPREAD, plain)
    if match is None or find_unit(match[3]) is None:
        return None
    low, high = float(match[1]) - float(match[2]), float(match[1]) + float(match[2])
    return f"{low:.10g} to {high:.10g} {match[3]}"


def _dashed(plain: str) -> str | None:
    plain = re.sub(r"^(?:between|from) ", "", plain)
    match = re.fullmatch(_DASHED, plain)
    if match is None:
        return None
    unit = (match[3] or match[4] or "").strip()
    return f"{match[1]} to {match[2].lstrip('+')} {unit}".strip()


def _two_parts(plain: str) -> str | None:
    match = re.fullmatch(_TWO_PARTS, plain)
    if match is None:
        return None
    first, second = find_unit(match[2]), find_unit(match[4])
    seconds = {"h": 3600, "min": 60, "s": 1}
    if first is None or second is None or first == second:
        return None
    total = float(match[1]) * seconds[first] + float(match[3]) * seconds[second]
    return f"{total / seconds[second]:.10g} {second}"


def _colon(plain: str) -> str | None:
    match = re.fullmatch(_COLON, plain)
    if match is None:
        return None
    total = int(match[1]) * 60 + int(match[2])
    return f"{total} s if minutes and seconds are meant, or {total} min if hours and minutes are"


def _letter_o(plain: str) -> str | None:
    mended = re.sub(_LETTER_O, "0", plain)
    return None if mended == plain else mended


def _spaced(plain: str) -> str | None:
    match = re.match(_SPACED, plain)
    return None if match is None else f"{match[0].replace(' ', '')}{plain[match.end() :]}"


def _bare_point(plain: str) -> str | None:
    mended = re.sub(r"(?<![0-9.])\.(?=[0-9])", "0.", plain)
    mended = re.sub(r"(?<=[0-9])\.(?![0-9.])", "", mended)
    return None if mended == plain or mended.count(".") > 1 else mended


def _tidy(value: str) -> str:
    return re.sub(r"(?<=[0-9])(?=[A-Za-z%])", " ", normalise(value))
