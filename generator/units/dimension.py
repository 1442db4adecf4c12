"""What a quantity measures, as powers of the SI base units."""

from dataclasses import dataclass

_BASE = ("s", "m", "kg", "K", "A", "mol")

Powers = tuple[int, int, int, int, int, int]


@dataclass(frozen=True, slots=True)
class Dimension:
    """Powers of second, metre, kilogram, kelvin, ampere and mole; `kind` keeps apart what never mixes."""

    powers: Powers = (0, 0, 0, 0, 0, 0)
    kind: str = ""

    @property
    def name(self) -> str:
        """The trade's word, or the SI base units where there is no word: "current density", "kg/m4"."""
        return self.kind or _NAMES.get(self.powers) or _spell(self.powers)

    def matches(self, other: "Dimension") -> bool:
        """Same powers, whatever the kind: what arithmetic can see."""
        return self.powers == other.powers

    def __mul__(self, other: "Dimension") -> "Dimension":
        return _combine(self, other, 1)

    def __truediv__(self, other: "Dimension") -> "Dimension":
        return _combine(self, other, -1)

    def __pow__(self, exponent: int) -> "Dimension":
        s, m, kg, k, a, mol = self.powers
        n = exponent
        return Dimension((s * n, m * n, kg * n, k * n, a * n, mol * n))

    def __str__(self) -> str:
        return self.name


def _combine(left: Dimension, right: Dimension, sign: int) -> Dimension:
    s, m, kg, k, a, mol = (x + sign * y for x, y in zip(left.powers, right.powers, strict=True))
    return Dimension((s, m, kg, k, a, mol))


def _spell(powers: Powers) -> str:
    above = " ".join(_power(base, n) for base, n in zip(_BASE, powers, strict=True) if n > 0)
    below = [_power(base, -n) for base, n in zip(_BASE, powers, strict=True) if n < 0]
    if not below:
        return above
    return f"{above or '1'}/{below[0]}" if len(below) == 1 else f"{above or '1'}/({' '.join(below)})"


def _power(base: str, n: int) -> str:
    return base if n == 1 else f"{base}{n}"


NUMBER = Dimension()
TIME = Dimension((1, 0, 0, 0, 0, 0))
LENGTH = Dimension((0, 1, 0, 0, 0, 0))
AREA = Dimension((0, 2, 0, 0, 0, 0))
VOLUME = Dimension((0, 3, 0, 0, 0, 0))
MASS = Dimension((0, 0, 1, 0, 0, 0))
TEMPERATURE = Dimension((0, 0, 0, 1, 0, 0))
DIFFERENCE = Dimension((0, 0, 0, 1, 0, 0), "temperature difference")
CURRENT = Dimension((0, 0, 0, 0, 1, 0))
VOLTAGE = Dimension((-3, 2, 1, 0, -1, 0))
RESISTANCE = Dimension((-3, 2, 1, 0, -2, 0))
RESISTIVITY = Dimension((-3, 3, 1, 0, -2, 0))
CHARGE = Dimension((1, 0, 0, 0, 1, 0))
CURRENT_DENSITY = Dimension((0, -2, 0, 0, 1, 0))
DENSITY = Dimension((0, -3, 1, 0, 0, 0))
MOLARITY = Dimension((0, -3, 0, 0, 0, 1))
AMOUNT = Dimension((0, 0, 0, 0, 0, 1))
MOLAR_MASS = Dimension((0, 0, 1, 0, 0, -1))
MOLAR_CHARGE = Dimension((1, 0, 0, 0, 1, -1))
ENERGY = Dimension((-2, 2, 1, 0, 0, 0))
POWER = Dimension((-3, 2, 1, 0, 0, 0))
MOLAR_ENERGY = Dimension((-2, 2, 1, 0, 0, -1))
HEAT_CAPACITY = Dimension((-2, 2, 0, -1, 0, 0))
PER_TEMPERATURE = Dimension((0, 0, 0, -1, 0, 0))
FLOW = Dimension((-1, 3, 0, 0, 0, 0))
PRESSURE = Dimension((-2, -1, 1, 0, 0, 0))
FREQUENCY = Dimension((-1, 0, 0, 0, 0, 0))
KINEMATIC_VISCOSITY = Dimension((-1, 2, 0, 0, 0, 0))
SPEED = Dimension((-1, 1, 0, 0, 0, 0))
AREA_MASS = Dimension((0, -2, 1, 0, 0, 0))
AREA_VOLUME = Dimension((0, 1, 0, 0, 0, 0))
VOLUME_BY_CHARGE = Dimension((-1, 3, 0, 0, -1, 0))
MASS_BY_CHARGE = Dimension((-1, 0, 1, 0, -1, 0))
AREA_CHARGE_LENGTH = Dimension((1, -3, 0, 0, 1, 0))
HRC = Dimension(kind="Rockwell C hardness")
SHORE_D = Dimension(kind="Shore D hardness")
PARTS = Dimension(kind="parts")
PIECES = Dimension(kind="pieces")

_NAMES = {
    NUMBER.powers: "plain number",
    TIME.powers: "time",
    LENGTH.powers: "length",
    AREA.powers: "area",
    VOLUME.powers: "volume",
    MASS.powers: "mass",
    TEMPERATURE.powers: "temperature",
    CURRENT.powers: "electric current",
    VOLTAGE.powers: "voltage",
    RESISTANCE.powers: "resistance",
    RESISTIVITY.powers: "resistivity",
    CHARGE.powers: "charge",
    CURRENT_DENSITY.powers: "current density",
    DENSITY.powers: "mass per volume",
    MOLARITY.powers: "amount per volume",
    AMOUNT.powers: "amount",
    MOLAR_MASS.powers: "molar mass",
    ENERGY.powers: "energy",
    POWER.powers: "power",
    MOLAR_ENERGY.powers: "energy per amount",
    HEAT_CAPACITY.powers: "specific heat",
    FLOW.powers: "flow",
    PRESSURE.powers: "pressure",
    FREQUENCY.powers: "frequency",
    SPEED.powers: "speed",
    KINEMATIC_VISCOSITY.powers: "kinematic viscosity",
    AREA_MASS.powers: "mass per area",
    VOLUME_BY_CHARGE.powers: "volume per charge",
    MASS_BY_CHARGE.powers: "mass per charge",
}
