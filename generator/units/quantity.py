"""Quantities and what authors make of them: windows, tolerances, counts, clock times."""

from dataclasses import dataclass, field
from functools import cache

from generator.units.dimension import TEMPERATURE, Dimension
from generator.units.errors import DimensionError
from generator.units.table import UNITS, Unit

# A value that is a unit conversion away from a window's edge is on the edge.
_NEAR = 1e-12


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number and the symbol of a unit of our table; `decimals` is how many the author wrote, if known."""

    number: float
    unit: str
    decimals: int | None = field(default=None, compare=False)

    @property
    def _row(self) -> Unit:
        return UNITS[self.unit]

    @property
    def dimension(self) -> Dimension:
        """What is measured."""
        return self._row.dimension

    @property
    def si(self) -> float:
        """The value in coherent SI units; a temperature in kelvin."""
        return to_si(self.number, self.unit)

    def to(self, unit: str) -> "Quantity":
        """The same quantity in another unit of the same dimension, else DimensionError."""
        if unit == self.unit:
            return self
        row = UNITS[unit]
        if row.dimension != self.dimension:
            raise DimensionError(f"a {self.dimension} ({self.unit}) is no {row.dimension} ({unit})")
        return Quantity(from_si(self.si, unit), unit)


def to_si(number: float, unit: str) -> float:
    """SI value of a number in a unit: (number + offset) x numerator / denominator, in this order.

    The page does the same three operations on the same doubles, so both agree to the last bit.
    """
    offset, top, bottom = _steps(unit)
    if offset:
        number = number + offset
    return number * top / bottom


def from_si(value: float, unit: str) -> float:
    """A number in a unit from the SI value: value x denominator / numerator - offset, in this order."""
    offset, top, bottom = _steps(unit)
    number = value * bottom / top
    return number - offset if offset else number


@cache
def _steps(unit: str) -> tuple[float, float, float]:
    """Offset, numerator and denominator of a unit as doubles."""
    row = UNITS[unit]
    return float(row.offset), row.numerator, row.denominator


@dataclass(frozen=True, slots=True)
class Window:
    """From low to high; an open side is None. One value alone has low equal to high."""

    low: Quantity | None
    high: Quantity | None

    def __post_init__(self) -> None:
        if self.low is None and self.high is None:
            raise ValueError("a window needs a low or a high side")
        if self.low and self.high and self.low.dimension != self.high.dimension:
            raise DimensionError(f"{self.low.unit} and {self.high.unit} do not measure the same thing")

    @property
    def dimension(self) -> Dimension:
        """What is measured."""
        return (self.low or self.high).dimension  # type: ignore[union-attr]

    @property
    def width(self) -> Quantity | None:
        """High less low, in the unit of the high side; None when a side is open."""
        if self.low is None or self.high is None:
            return None
        unit = self.high.unit
        width = float(f"{self.high.number - self.low.to(unit).number:.12g}")
        return Quantity(width, difference_unit(unit))

    def contains(self, value: "Quantity | Window") -> bool:
        """Whether a quantity, or all of another window, lies inside; DimensionError if it cannot be said."""
        if isinstance(value, Window):
            return self._below(value.low) and self._above(value.high)
        return self._below(value) and self._above(value)

    def _below(self, value: Quantity | None) -> bool:
        return self.low is None or (value is not None and _reaches(value, self.low))

    def _above(self, value: Quantity | None) -> bool:
        return self.high is None or (value is not None and _reaches(self.high, value))


def _reaches(high: Quantity, low: Quantity) -> bool:
    if high.unit == low.unit:
        return high.number >= low.number
    if high.dimension != low.dimension:
        raise DimensionError(f"{high.unit} and {low.unit} do not measure the same thing")
    return high.si >= low.si - _NEAR * abs(low.si)


def difference_unit(unit: str) -> str:
    """The unit of a difference between two values in `unit`: thermometer scales have one of their own."""
    row = UNITS[unit]
    if row.offset and row.dimension == TEMPERATURE:
        return f"delta {unit}"
    return unit


@dataclass(frozen=True, slots=True)
class Tolerance:
    """A value and how far it may be off to either side."""

    value: Quantity
    plus_minus: Quantity

    def __post_init__(self) -> None:
        if self.plus_minus.dimension != UNITS[difference_unit(self.value.unit)].dimension:
            raise DimensionError(f"{self.plus_minus.unit} is no tolerance on {self.value.unit}")

    @property
    def window(self) -> Window:
        """The same as a window from the lowest to the highest value, in the unit of the value."""
        unit = difference_unit(self.value.unit)
        off = self.plus_minus.to(unit).number
        low, high = self.value.number - off, self.value.number + off
        return Window(Quantity(low, self.value.unit), Quantity(high, self.value.unit))


@dataclass(frozen=True, slots=True)
class Counted:
    """A whole number of something that is no unit: 4 points, 10 times."""

    number: int
    word: str


@dataclass(frozen=True, slots=True, order=True)
class Clock:
    """A time of day, in whole minutes since midnight."""

    minutes: int

    def __str__(self) -> str:
        return f"{self.minutes // 60:02d}:{self.minutes % 60:02d}"
