"""The unit to offer where a field's number has none: the floor of units knows of no field."""

from generator.units import Dimension, UnitsError
from generator.units.mending import ask_for_unit

_USUAL = {
    "length": "m",
    "temperature": "degC",
    "volume": "L",
    "mass per volume": "kg/L",
    "kinematic viscosity": "mm2/s",
    "electric current": "A",
}


def fix_of(bad: UnitsError, dimensions: tuple[Dimension, ...]) -> str:
    """The fix of a refused quantity; a number without its unit is shown with one that the field takes."""
    unit = _USUAL.get(dimensions[0].name) if dimensions else None
    return ask_for_unit(bad.number, unit) if bad.number and unit else bad.fix
