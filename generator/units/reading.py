"""Reads what an author wrote as a quantity, a window, a tolerance or a count; refuses with a fix."""

import math
import re
from functools import lru_cache

from generator.units.errors import DimensionError, UnitsError
from generator.units.mending import LONGEST, refuse_number, refuse_unit, refuse_value, short
from generator.units.quantity import Counted, Quantity, Tolerance, Window, difference_unit
from generator.units.showing import write_number, write_quantity
from generator.units.spelling import find_unit, normalise
from generator.units.table import UNITS

_NUMBER = r"[+-]?[0-9]+(?:\.([0-9]+))?(?:[eE][+-]?[0-9]{1,3})?"
_VALUE = r"([+-]?[0-9]+(?:\.[0-9]+)?(?:[eE][+-]?[0-9]{1,3})?) ?(?![\d.,])(.*)"
_COUNT = r"([0-9]+) ([^\W\d][\w-]*(?: [^\W\d][\w-]*)?)"
_SIDES = (("up to ", "high"), ("at least ", "low"))


@lru_cache(maxsize=4096)
def read_quantity(text: str) -> Quantity:
    """One number with one unit, such as "1.9 A/dm2". UnitsError otherwise."""
    return _quantity(_plain(text), text, "a number and a unit, such as 8 min")


def read_number(text: str) -> float:
    """One plain number, such as a pH. UnitsError otherwise."""
    return _number(_plain(text), text, "").number


def read_unit(text: str) -> str:
    """The symbol of our table for a unit alone, such as "A h". UnitsError otherwise."""
    symbol = find_unit(text) if len(text) <= LONGEST else None
    if symbol is None:
        raise refuse_unit(short(text).strip(), "", "")
    return symbol


@lru_cache(maxsize=4096)
def read_window(text: str) -> Window:
    """ "6 to 10 min", "24 h to 7 days", "up to 8 min", "at least 90 s", or one value. Else UnitsError."""
    plain = _plain(text)
    for words, side in _SIDES:
        if plain.startswith(words):
            value = _quantity(plain[len(words) :], text, f"{words}8 min")
            return Window(value, None) if side == "low" else Window(None, value)
    low_text, to, high_text = plain.partition(" to ")
    if not to:
        value = _quantity(plain, text, "a value or a window with its unit, such as 8 min or 6 to 10 min")
        return Window(value, value)
    high = _quantity(high_text, text, "a window with its unit, such as 6 to 10 min")
    low = _low_side(low_text, high, text)
    return _in_order(low, high, text)


def _low_side(low_text: str, high: Quantity, text: str) -> Quantity:
    if re.fullmatch(_NUMBER, low_text):
        return _number(low_text, text, high.unit)
    return _quantity(low_text, text, "a window with its unit, such as 6 to 10 min")


def _in_order(low: Quantity, high: Quantity, text: str) -> Window:
    if low.dimension != high.dimension:
        message = f"`{short(text)}` goes from a {low.dimension} to a {high.dimension}"
        raise UnitsError("unit-missing", message, "give both sides in units of the same kind")
    if low.si > high.si:
        message = f"`{short(text)}` goes down: its low side is above its high side"
        raise UnitsError("unit-missing", message, f"write {_turned(low, high)}")
    return Window(low, high)


def _turned(low: Quantity, high: Quantity) -> str:
    """The window with its sides the right way round, as an author would type it."""
    first = write_number(high) if low.unit == high.unit else write_quantity(high)
    return f"{first} to {write_quantity(low)}"


def read_numbers_window(text: str) -> Window:
    """A window of plain numbers, such as a pH: "9.5 to 10.4", "up to 1", "7". Its unit is ""."""
    plain = _plain(text)
    for words, side in _SIDES:
        if plain.startswith(words):
            value = _number(plain[len(words) :], text, "")
            return Window(value, None) if side == "low" else Window(None, value)
    low_text, to, high_text = plain.partition(" to ")
    low = _number(low_text, text, "")
    return _in_order(low, _number(high_text, text, ""), text) if to else Window(low, low)


@lru_cache(maxsize=4096)
def read_tolerance(text: str) -> Tolerance:
    """ "0.90 +/- 0.05 mm" or "0.90 mm +/- 50 um". UnitsError otherwise."""
    plain = _plain(text)
    value_text, sign, off_text = (part.strip() for part in plain.partition("+/-"))
    if not sign:
        message = f"`{short(text)}` gives no tolerance"
        raise UnitsError("unit-missing", message, "write it as 0.90 +/- 0.05 mm")
    off = _quantity(off_text, text, "a tolerance, such as 0.90 +/- 0.05 mm")
    if re.fullmatch(_NUMBER, value_text):
        value = _number(value_text, text, off.unit)
        return _tolerance(value, _difference(off), text)
    value = _quantity(value_text, text, "a tolerance, such as 0.90 +/- 0.05 mm")
    return _tolerance(value, _difference(off), text)


def _difference(off: Quantity) -> Quantity:
    return Quantity(off.number, difference_unit(off.unit), off.decimals)


def _tolerance(value: Quantity, off: Quantity, text: str) -> Tolerance:
    if off.number < 0:
        message = f"`{short(text)}` has a tolerance below nothing"
        raise UnitsError("unit-missing", message, "write the tolerance without a sign")
    if off.unit == "K" and value.unit != "K":
        off = Quantity(off.number, "delta degC", off.decimals)
    try:
        return Tolerance(value, off)
    except DimensionError as error:
        message = f"`{short(text)}` has a tolerance in {off.unit} on a value in {value.unit}"
        raise UnitsError("unit-missing", message, f"write the tolerance in {value.unit}") from error


def read_counted(text: str) -> Counted:
    """A whole number of things: "4 points". UnitsError otherwise, also where the word is a unit of ours."""
    plain = _plain(text)
    match = re.fullmatch(_COUNT, plain)
    if match is None or int(match[1]) < 1 or len(match[1]) > 6:
        message = f"`{short(text)}` is no count: a whole number and what is counted are expected"
        raise UnitsError("unit-missing", message, "write a count such as 10 times or 4 points")
    unit = find_unit(match[2])
    if unit and not UNITS[unit].dimension.kind:
        message = f"`{short(text)}` is a {UNITS[unit].dimension}, and a count is expected"
        raise UnitsError("unit-missing", message, "write a count such as 10 times or 4 points")
    return Counted(int(match[1]), match[2])


def _plain(text: str) -> str:
    if len(text) > LONGEST:
        message = f"`{short(text)}` is too long for a quantity"
        raise UnitsError("unit-missing", message, "write a number and a unit, such as 8 min")
    return normalise(text)


@lru_cache(maxsize=4096)
def _quantity(plain: str, text: str, expected: str) -> Quantity:
    match = re.fullmatch(_VALUE, plain)
    if match is None or not match[2]:
        raise refuse_value(plain, text, expected)
    number, unit_text = match[1], match[2].strip()
    unit = find_unit(unit_text)
    if unit is None:
        raise refuse_unit(unit_text, number, text)
    return _number(number, text, unit)


def _number(plain: str, text: str, unit: str) -> Quantity:
    match = re.fullmatch(_NUMBER, plain)
    if match is None:
        raise refuse_number(plain, text)
    value = float(plain)
    if not math.isfinite(value) or (value and not 1e-30 < abs(value) < 1e30):
        message = f"`{short(text)}` is too large or too small for any bench"
        raise UnitsError("unit-missing", message, "check the power of ten")
    decimals = len(match[1] or "") if "e" not in plain.lower() else None
    return Quantity(value, unit, decimals)
