"""The only door to pint: our quantities out and in. Nothing of an author's is handed to pint's parser."""

from functools import cache
from typing import TYPE_CHECKING, Any

from generator.units.errors import DimensionError
from generator.units.quantity import Quantity
from generator.units.table import UNITS

if TYPE_CHECKING:
    from pint import UnitRegistry

# Where pint's own reader would take our symbol for something else, or not know it.
PINT_NAMES = {
    "": "dimensionless",
    "h": "hour",
    "min": "minute",
    "1/min": "1/minute",
    "t": "metric_ton",
    "gal": "gallon",
    "oz/gal": "ounce/gallon",
    "gal/h": "gallon/hour",
    "gal/min": "gallon/minute",
    "oz": "ounce",
    "oz/ft2": "ounce/foot**2",
    "in": "inch",
    "mil": "thou",
    "degC": "degC",
    "delta degC": "delta_degC",
    "delta degF": "delta_degF",
    "%": "percent",
    "% w/w": "percent",
    "% v/v": "percent",
    "A h": "ampere*hour",
    "mA h": "milliampere*hour",
    "A min": "ampere*minute",
    "kW h": "kilowatt*hour",
    "ohm m": "ohm*meter",
    "uohm cm": "microohm*centimeter",
    "ohm mm2/m": "ohm*millimeter**2/meter",
    "mL/(A h)": "milliliter/(ampere*hour)",
    "g/(A h)": "gram/(ampere*hour)",
    "J/(g K)": "joule/(gram*kelvin)",
    "J/(kg K)": "joule/(kilogram*kelvin)",
    "A min/(ft2 mil)": "ampere*minute/(foot**2*thou)",
    "um/h": "micrometer/hour",
    "L/h": "liter/hour",
    "m3/h": "meter**3/hour",
    "m/min": "meter/minute",
    "mm/min": "millimeter/minute",
    "um/min": "micrometer/minute",
    "L/min": "liter/minute",
    "mL/min": "milliliter/minute",
}

# Of hardness, parts and pieces pint knows nothing.
_KNOWN_KINDS = ("", "temperature difference")


@cache
def registry() -> "UnitRegistry[Any]":
    """Pint's registry, built on first use: it costs some tenths of a second."""
    from pint import UnitRegistry

    return UnitRegistry(autoconvert_offset_to_baseunit=False)


def pint_name(symbol: str) -> str:
    """Pint's text for a unit of our table."""
    name = PINT_NAMES.get(symbol)
    if name is None:
        name = symbol
        for power in "234":
            name = name.replace(f"m{power}", f"m**{power}").replace(f"ft{power}", f"ft**{power}")
        name = name.replace("in2", "in**2")
    return name


def to_pint(quantity: Quantity) -> Any:
    """The quantity as a pint quantity in the same unit; DimensionError for hardness, parts and pieces."""
    row = UNITS[quantity.unit]
    if row.dimension.kind not in _KNOWN_KINDS:
        raise DimensionError(f"pint has no unit for {row.dimension}")
    return registry().Quantity(quantity.number, _unit(quantity.unit))


@cache
def _unit(symbol: str) -> Any:
    return registry().Unit(pint_name(symbol))


@cache
def _parts(symbol: str) -> frozenset[tuple[str, float]]:
    """The units that pint makes one of ours of, each with its power."""
    return _parts_of(to_pint(Quantity(1.0, symbol)))


def _parts_of(value: Any) -> frozenset[tuple[str, float]]:
    return frozenset(value.unit_items())


def from_pint_in(value: Any, units: tuple[str, ...]) -> Quantity:
    """A pint quantity as ours: its own number where its unit is one of `units`, else in the first of them.

    Our conversions are exact to the last bit, and the page's; pint's may be a bit away.
    """
    parts = _parts_of(value)
    for unit in units:
        if UNITS[unit].dimension.kind in _KNOWN_KINDS and _parts(unit) == parts:
            return Quantity(float(value.magnitude), unit)
    return from_pint(value, units[0])


def from_pint(value: Any, unit: str) -> Quantity:
    """A pint quantity as ours, in a unit of our table; DimensionError when it measures something else."""
    from pint import DimensionalityError

    units = registry()
    try:
        # Over the base units, so that a quantity of another registry is read too.
        number = units.Quantity(value.magnitude, str(value.units)).to(pint_name(unit)).magnitude
    except DimensionalityError as error:
        raise DimensionError(str(error)) from error
    return Quantity(float(number), unit)
