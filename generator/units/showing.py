"""Prints quantities as NIST SP 811 asks: a no-break space before the unit, a true minus, thin groups."""

from functools import lru_cache

from generator.units.quantity import Counted, Quantity, Tolerance, Window
from generator.units.table import UNITS

NO_BREAK = "\u00a0"
THIN = "\u202f"
MINUS = "\u2212"
_RAISED = str.maketrans("-0123456789", "\u207b\u2070\u00b9\u00b2\u00b3\u2074\u2075\u2076\u2077\u2078\u2079")


@lru_cache(maxsize=1024)
def show_number(number: float, decimals: int | None = None, digits: int | None = None) -> str:
    """A number for print: as many decimals, or else as many significant digits, as asked for.

    With neither, the shortest text that reads back as the same number to 12 significant digits.
    """
    if number and not 1e-5 <= abs(number) < 1e9:
        return _show_power(number, digits)
    text = _fixed(number, decimals, digits)
    if float(text) == 0:
        text = text.lstrip("-")
    return _grouped(text).replace("-", MINUS)


def _fixed(number: float, decimals: int | None, digits: int | None) -> str:
    from math import floor, log10

    if digits is None:
        return f"{number:.{decimals}f}" if decimals is not None else _shortest(number)
    if not number:
        return "0"
    rounded = float(f"{number:.{digits - 1}e}")
    places = digits - 1 - floor(log10(abs(rounded)))
    return f"{rounded:.{max(places, 0)}f}"


def _shortest(number: float) -> str:
    if abs(number) >= 1 or not number:
        return f"{number:.12g}"
    from math import floor, log10

    return f"{number:.{11 - floor(log10(abs(number)))}f}".rstrip("0")


def _show_power(number: float, digits: int | None) -> str:
    from decimal import ROUND_HALF_UP, Context

    # Halves go away from zero, as in a browser's toExponential.
    figures = digits or 12
    rounded = Context(prec=figures, rounding=ROUND_HALF_UP).create_decimal_from_float(number)
    mantissa, power = f"{rounded:.{figures - 1}e}".split("e")
    if not digits and "." in mantissa:
        mantissa = mantissa.rstrip("0").rstrip(".")
    raised = str(int(power)).translate(_RAISED)
    return f"{mantissa.replace('-', MINUS)}{NO_BREAK}\u00d7{NO_BREAK}10{raised}"


def _grouped(text: str) -> str:
    whole, point, rest = text.partition(".")
    sign, figures = ("-", whole[1:]) if whole.startswith("-") else ("", whole)
    if len(figures) > 4:
        figures = f"{int(figures):,}".replace(",", THIN)
    return f"{sign}{figures}{point}{rest}"


def show_unit(unit: str, number: float = 2) -> str:
    """The unit as printed after a number."""
    row = UNITS[unit]
    return (row.shown if number == 1 else row.plural).replace(" ", NO_BREAK)


def show_quantity(quantity: Quantity, digits: int | None = None) -> str:
    """Number and unit: "8 min", "1.9 A/dm2" with a raised 2. The author's decimals unless told digits."""
    number = show_number(quantity.number, quantity.decimals, digits)
    unit = show_unit(quantity.unit, quantity.number)
    return f"{number}{NO_BREAK}{unit}" if unit else number


def show_window(window: Window, digits: int | None = None) -> str:
    """ "6 to 10 min", "up to 8 min", "at least 90 s", or one value; units as the author wrote them."""
    low, high = window.low, window.high
    if low is None or high is None:
        return (
            f"up to {show_quantity(high, digits)}" if high else f"at least {show_quantity(_one(low), digits)}"
        )
    if low == high:
        return show_quantity(low, digits)
    if low.unit == high.unit:
        return f"{show_number(low.number, low.decimals, digits)} to {show_quantity(high, digits)}"
    return f"{show_quantity(low, digits)} to {show_quantity(high, digits)}"


def _one(side: Quantity | None) -> Quantity:
    if side is None:
        raise ValueError("a window has at least one side")
    return side


def show_tolerance(tolerance: Tolerance) -> str:
    """ "0.90 ± 0.05 mm"; with two units, each after its number."""
    value, off = tolerance.value, tolerance.plus_minus
    if show_unit(value.unit) == show_unit(off.unit):
        return f"{show_number(value.number, value.decimals)}{NO_BREAK}±{NO_BREAK}{show_quantity(off)}"
    return f"{show_quantity(value)}{NO_BREAK}±{NO_BREAK}{show_quantity(off)}"


def show_counted(counted: Counted) -> str:
    """ "10 times" that does not break over the line."""
    return f"{counted.number}{NO_BREAK}{counted.word}"


def write_quantity(quantity: Quantity) -> str:
    """The quantity in plain ASCII, as an author would type it; reads back as the same quantity."""
    return f"{write_number(quantity)} {quantity.unit}".strip()


def write_number(quantity: Quantity) -> str:
    """The number alone in plain ASCII, with the author's decimals where they are known."""
    if quantity.decimals is not None:
        return f"{quantity.number:.{quantity.decimals}f}"
    return repr(quantity.number).removesuffix(".0")
