"""The units that a lab may write, with exact factors to coherent SI."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import Literal

from generator.units import dimension as dim
from generator.units.dimension import Dimension

Kind = Literal["si", "trade"]


@dataclass(frozen=True, slots=True)
class Unit:
    """One unit: SI value = (number + offset) x factor.

    symbol: our ASCII name; shown, plural: as printed; spellings: what authors may write besides.
    """

    symbol: str
    shown: str
    dimension: Dimension
    factor: Fraction
    spellings: tuple[str, ...] = ()
    kind: Kind = "si"
    offset: Fraction = Fraction(0)
    plural: str = ""

    @property
    def numerator(self) -> float:
        """Top of the factor; a whole number below 2**53, so exact as a double."""
        return float(self.factor.numerator)

    @property
    def denominator(self) -> float:
        """Bottom of the factor; a whole number below 2**53, so exact as a double."""
        return float(self.factor.denominator)


_F = Fraction
_LB = _F(45359237, 100_000_000)
_OZ = _LB / 16
_GAL = _F(231) * _F(254, 10_000) ** 3
_FT2 = _F(3048, 10_000) ** 2
_L = _F(1, 1000)
_DAY = 86_400
_YEAR = _F(_DAY * 1461, 4)


def _si(
    symbol: str, shown: str, dimension: Dimension, factor: Fraction | int, *spellings: str, plural: str = ""
) -> Unit:
    return Unit(symbol, shown, dimension, _F(factor), spellings, plural=plural or shown)


def _trade(symbol: str, shown: str, dimension: Dimension, factor: Fraction | int, *spellings: str) -> Unit:
    return Unit(symbol, shown, dimension, _F(factor), spellings, "trade", plural=shown)


_TIMES = (
    _si("s", "s", dim.TIME, 1, "sec", "secs", "second", "seconds"),
    _si("min", "min", dim.TIME, 60, "mins", "minute", "minutes"),
    _si("h", "h", dim.TIME, 3600, "hr", "hrs", "hour", "hours"),
    _si("day", "day", dim.TIME, _DAY, "d", "days", plural="days"),
    _si("week", "week", dim.TIME, 7 * _DAY, "weeks", "wk", "wks", plural="weeks"),
    # Julian year and its twelfth; a calendar date in so many months is the calendar's affair.
    _si("month", "month", dim.TIME, _YEAR / 12, "months", plural="months"),
    _si("year", "year", dim.TIME, _YEAR, "years", "yr", "yrs", plural="years"),
    _si("1/s", "1/s", dim.FREQUENCY, 1, "/s", "s-1", "per second", "Hz", "hertz"),
    _si("1/min", "1/min", dim.FREQUENCY, _F(1, 60), "rpm", "rev/min", "r/min", "/min", "min-1", "per minute"),
)

_SPACE = (
    _si("km", "km", dim.LENGTH, 1000, "kilometre", "kilometres"),
    _si("m", "m", dim.LENGTH, 1, "metre", "metres", "meter", "meters"),
    _si("dm", "dm", dim.LENGTH, _F(1, 10)),
    _si("cm", "cm", dim.LENGTH, _F(1, 100), "centimetre", "centimetres"),
    _si("mm", "mm", dim.LENGTH, _F(1, 1000), "millimetre", "millimetres", "millimeter", "millimeters"),
    _si("um", "µm", dim.LENGTH, _F(1, 10**6), "micron", "microns", "micrometre", "micrometres"),
    _si("nm", "nm", dim.LENGTH, _F(1, 10**9), "nanometre", "nanometres"),
    _trade("in", "in", dim.LENGTH, _F(254, 10_000), "inch", "inches"),
    _trade("ft", "ft", dim.LENGTH, _F(3048, 10_000), "foot", "feet"),
    _trade("mil", "mil", dim.LENGTH, _F(254, 10**7), "mils", "thou"),
    _si("m2", "m²", dim.AREA, 1),
    _si("dm2", "dm²", dim.AREA, _F(1, 100)),
    _si("cm2", "cm²", dim.AREA, _F(1, 10**4)),
    _si("mm2", "mm²", dim.AREA, _F(1, 10**6)),
    _trade("ft2", "ft²", dim.AREA, _FT2, "sq ft"),
    _trade("in2", "in²", dim.AREA, _FT2 / 144, "sq in"),
    _si("m3", "m³", dim.VOLUME, 1),
    _si("L", "L", dim.VOLUME, _L, "l", "litre", "litres", "liter", "liters", "dm3"),
    _si("mL", "mL", dim.VOLUME, _L / 1000, "ml", "millilitre", "millilitres", "milliliter", "milliliters"),
    _si("uL", "µL", dim.VOLUME, _L / 10**6, "ul", "microlitre", "microlitres"),
    _si("cm3", "cm³", dim.VOLUME, _F(1, 10**6), "cc"),
    _trade("gal", "gal (US)", dim.VOLUME, _GAL, "gallon", "gallons", "US gal", "gal (US)"),
    _si("mm2/s", "mm²/s", dim.KINEMATIC_VISCOSITY, _F(1, 10**6), "cSt"),
    _si("m/s", "m/s", dim.SPEED, 1),
    _si("m/min", "m/min", dim.SPEED, _F(1, 60)),
    _si("mm/s", "mm/s", dim.SPEED, _F(1, 1000)),
    _si("mm/min", "mm/min", dim.SPEED, _F(1, 60_000)),
    _si("um/min", "µm/min", dim.SPEED, _F(1, 60 * 10**6), "micron/min"),
    _si("um/h", "µm/h", dim.SPEED, _F(1, 3600 * 10**6)),
    _si("mm/day", "mm/day", dim.SPEED, _F(1, 1000 * _DAY), "mm/d"),
    _si("L/min", "L/min", dim.FLOW, _L / 60, "l/min"),
    _si("L/h", "L/h", dim.FLOW, _L / 3600, "l/h", "L/hr"),
    _si("L/day", "L/day", dim.FLOW, _L / _DAY, "l/day", "L/d"),
    _si("mL/min", "mL/min", dim.FLOW, _L / 60_000, "ml/min"),
    _si("m3/h", "m³/h", dim.FLOW, _F(1, 3600)),
    _trade("gal/h", "gal/h", dim.FLOW, _GAL / 3600, "gph", "gal/hr"),
    _trade("gal/min", "gal/min", dim.FLOW, _GAL / 60, "gpm"),
)

_MATTER = (
    _si("t", "t", dim.MASS, 1000, "tonne", "tonnes"),
    _si("kg", "kg", dim.MASS, 1, "kilogram", "kilograms"),
    _si("g", "g", dim.MASS, _F(1, 1000), "gram", "grams", "gramme", "grammes"),
    _si("mg", "mg", dim.MASS, _F(1, 10**6), "milligram", "milligrams"),
    _si("ug", "µg", dim.MASS, _F(1, 10**9), "microgram", "micrograms"),
    _trade("oz", "oz", dim.MASS, _OZ, "ounce", "ounces"),
    _trade("lb", "lb", dim.MASS, _LB, "lbs", "pound", "pounds"),
    _si("mol", "mol", dim.AMOUNT, 1, "mole", "moles"),
    _si("mmol", "mmol", dim.AMOUNT, _F(1, 1000)),
    _si("g/mol", "g/mol", dim.MOLAR_MASS, _F(1, 1000)),
    _si("kg/mol", "kg/mol", dim.MOLAR_MASS, 1),
    _si("g/L", "g/L", dim.DENSITY, 1, "g/l", "g/dm3"),
    _si("mg/L", "mg/L", dim.DENSITY, _F(1, 1000), "mg/l"),
    _si("ug/L", "µg/L", dim.DENSITY, _F(1, 10**6), "ug/l"),
    _si("mg/mL", "mg/mL", dim.DENSITY, 1, "mg/ml"),
    _si("kg/m3", "kg/m³", dim.DENSITY, 1),
    _si("kg/L", "kg/L", dim.DENSITY, 1000, "kg/l", "kg/dm3"),
    _si("g/cm3", "g/cm³", dim.DENSITY, 1000, "g/cc"),
    _si("g/mL", "g/mL", dim.DENSITY, 1000, "g/ml"),
    _trade("oz/gal", "oz/gal (US)", dim.DENSITY, _OZ / _GAL, "oz/gal (US)"),
    _si("mol/L", "mol/L", dim.MOLARITY, 1000, "mol/l", "M", "molar", "mol/dm3"),
    _si("mmol/L", "mmol/L", dim.MOLARITY, 1, "mmol/l", "mM"),
    _si("mol/m3", "mol/m³", dim.MOLARITY, 1),
    _si("g/m2", "g/m²", dim.AREA_MASS, _F(1, 1000), "gsm"),
    _si("mg/cm2", "mg/cm²", dim.AREA_MASS, _F(1, 100)),
    _si("mg/dm2", "mg/dm²", dim.AREA_MASS, _F(1, 10**4)),
    _trade("oz/ft2", "oz/ft²", dim.AREA_MASS, _OZ / _FT2),
    _si("L/m2", "L/m²", dim.AREA_VOLUME, _L, "l/m2"),
    _si("mL/dm2", "mL/dm²", dim.AREA_VOLUME, _F(1, 10**4), "ml/dm2"),
    _si("mL/m2", "mL/m²", dim.AREA_VOLUME, _L / 1000, "ml/m2"),
)

_POWER = (
    _si("A", "A", dim.CURRENT, 1, "amp", "amps", "ampere", "amperes"),
    _si("mA", "mA", dim.CURRENT, _F(1, 1000)),
    _si("kA", "kA", dim.CURRENT, 1000),
    _si("V", "V", dim.VOLTAGE, 1, "volt", "volts"),
    _si("mV", "mV", dim.VOLTAGE, _F(1, 1000)),
    _si("kohm", "kΩ", dim.RESISTANCE, 1000, "kOhm"),
    _si("ohm", "Ω", dim.RESISTANCE, 1, "ohms", "Ohm"),
    _si("mohm", "mΩ", dim.RESISTANCE, _F(1, 1000), "mOhm", "milliohm", "milliohms"),
    _si("uohm", "µΩ", dim.RESISTANCE, _F(1, 10**6), "uOhm", "microohm", "microohms"),
    _si("ohm m", "Ω·m", dim.RESISTIVITY, 1),
    _si("uohm cm", "µΩ·cm", dim.RESISTIVITY, _F(1, 10**8)),
    _si("ohm mm2/m", "Ω·mm²/m", dim.RESISTIVITY, _F(1, 10**6)),
    # The bare letter C is refused in authors' text: it is meant as degrees far more often.
    _si("coulomb", "C", dim.CHARGE, 1, "coulombs", "A s", "As"),
    _si("A h", "A·h", dim.CHARGE, 3600, "Ah", "ampere-hour", "ampere-hours"),
    _si("mA h", "mA·h", dim.CHARGE, _F(36, 10), "mAh"),
    _si("A min", "A·min", dim.CHARGE, 60),
    _si("coulomb/mol", "C/mol", dim.MOLAR_CHARGE, 1),
    _si("A/m2", "A/m²", dim.CURRENT_DENSITY, 1),
    _si("A/dm2", "A/dm²", dim.CURRENT_DENSITY, 100, "ASD"),
    _si("mA/cm2", "mA/cm²", dim.CURRENT_DENSITY, 10),
    _trade("A/ft2", "A/ft²", dim.CURRENT_DENSITY, 1 / _FT2, "ASF"),
    _si("mL/(A h)", "mL/(A·h)", dim.VOLUME_BY_CHARGE, _F(1, 36 * 10**8), "mL/Ah", "ml/(A h)", "ml/Ah"),
    _si("g/(A h)", "g/(A·h)", dim.MASS_BY_CHARGE, _F(1, 36 * 10**5), "g/Ah", "g/A h"),
    _trade("A min/(ft2 mil)", "A·min/(ft²·mil)", dim.AREA_CHARGE_LENGTH, 60 / _FT2 / _F(254, 10**7)),
    _si("J", "J", dim.ENERGY, 1, "joule", "joules"),
    _si("kJ", "kJ", dim.ENERGY, 1000),
    _si("kW h", "kW·h", dim.ENERGY, 3_600_000, "kWh"),
    _si("W", "W", dim.POWER, 1, "watt", "watts"),
    _si("kW", "kW", dim.POWER, 1000),
    _si("kJ/mol", "kJ/mol", dim.MOLAR_ENERGY, 1000),
    _si("J/mol", "J/mol", dim.MOLAR_ENERGY, 1),
    _si("J/(g K)", "J/(g·K)", dim.HEAT_CAPACITY, 1000, "kJ/(kg K)"),
    _si("J/(kg K)", "J/(kg·K)", dim.HEAT_CAPACITY, 1),
    _si("Pa", "Pa", dim.PRESSURE, 1),
    _si("kPa", "kPa", dim.PRESSURE, 1000),
    _si("bar", "bar", dim.PRESSURE, 10**5),
)

_WARMTH = (
    Unit("degC", "°C", dim.TEMPERATURE, _F(1), ("deg C", "celsius", "Celsius"), "si", _F(27315, 100), "°C"),
    Unit("degF", "°F", dim.TEMPERATURE, _F(5, 9), ("deg F", "fahrenheit"), "trade", _F(45967, 100), "°F"),
    _si("K", "K", dim.TEMPERATURE, 1, "kelvin"),
    _si("delta degC", "°C", dim.DIFFERENCE, 1),
    _trade("delta degF", "°F", dim.DIFFERENCE, _F(5, 9)),
    _si("1/K", "1/K", dim.PER_TEMPERATURE, 1, "/K", "1/degC", "K-1"),
)

_NUMBERS = (
    _si("", "", dim.NUMBER, 1),
    _si("%", "%", dim.NUMBER, _F(1, 100), "percent", "per cent"),
    _si("% w/w", "% w/w", dim.NUMBER, _F(1, 100), "% m/m", "wt%", "wt %", "%w/w"),
    _si("% v/v", "% v/v", dim.NUMBER, _F(1, 100), "vol%", "vol %", "%v/v"),
    _si("ppm", "ppm", dim.NUMBER, _F(1, 10**6)),
    _si("mL/L", "mL/L", dim.NUMBER, _L, "ml/l"),
    _si("mm/m", "mm/m", dim.NUMBER, _F(1, 1000)),
    _si("g/kg", "g/kg", dim.NUMBER, _F(1, 1000)),
    _si("parts", "parts", dim.PARTS, 1, "part"),
    _si("HRC", "HRC", dim.HRC, 1),
    _si("ShoreD", "Shore D", dim.SHORE_D, 1, "Shore D", "shore D"),
    _si("boards", "boards", dim.PIECES, 1, "board"),
    _si("pieces", "pieces", dim.PIECES, 1, "piece"),
    _si("holes", "holes", dim.PIECES, 1, "hole"),
)

_ALL = _TIMES + _SPACE + _MATTER + _POWER + _WARMTH + _NUMBERS

UNITS: Mapping[str, Unit] = MappingProxyType({unit.symbol: unit for unit in _ALL})


@cache
def spellings() -> Mapping[str, str]:
    """Every spelling that is read, to the symbol that it means; the unit of a plain number has none."""
    pairs = {text: unit.symbol for unit in _ALL for text in (*unit.spellings, unit.symbol)}
    return MappingProxyType({text: symbol for text, symbol in pairs.items() if text})
