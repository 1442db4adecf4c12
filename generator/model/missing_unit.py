"""The unit to offer where a field's number has none: the floor of units knows only of minutes."""

import re

from generator.units import Dimension

_USUAL = {
    "length": "m",
    "temperature": "degC",
    "volume": "L",
    "mass per volume": "kg/L",
    "kinematic viscosity": "mm2/s",
    "electric current": "A",
}
_FIX = re.compile(r"(write the unit after the number, such as \S+) min")


def in_kind(fix: str, dimensions: tuple[Dimension, ...]) -> str:
    """The fix of a refused quantity, whose example has a unit that the field takes."""
    unit = _USUAL.get(dimensions[0].name) if dimensions else None
    found = _FIX.fullmatch(fix)
    return f"{found[1]} {unit}" if unit and found else fix
