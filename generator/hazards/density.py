"""The density that turns g/L into % w/w: given, or estimated for a watery bath and said to be."""

from dataclasses import dataclass

from generator.hazards.composition import WATER, Composition
from generator.hazards.molar import molar_mass
from generator.units import UNITS, Quantity

# Our own rule of thumb: water at 20 degC plus 0.6 kg/L for each kg/L of what is dissolved. Against published
# densities (test_density.py) it is within 5 % up to 200 g/L, and low for lyes: shares come out too high.
_WATER = 0.998
_SLOPE = 0.6
_MOST_DISSOLVED = 400.0


@dataclass(frozen=True, slots=True)
class DensityUsed:
    """A density in kg/L, whether it was estimated, and the sentence to print."""

    value: Quantity
    estimated: bool
    says: str


def density_used(composition: Composition) -> DensityUsed | None:
    """The given density, or an estimate where water is the rest and the others dissolve; None if neither."""
    if composition.density is not None:
        given = composition.density.to("kg/L")
        return DensityUsed(given, False, f"density {given.number:.4g} kg/L as given")
    dissolved = _dissolved(composition)
    if dissolved is None or dissolved > _MOST_DISSOLVED:
        return None
    estimate = round(_WATER + _SLOPE * dissolved / 1000, 3)
    says = (
        f"density not given; estimated at {estimate:.3f} kg/L "
        f"(water 0.998 + 0.6 × {dissolved / 1000:.3g} kg/L dissolved, within about 5 %)"
    )
    return DensityUsed(Quantity(estimate, "kg/L"), True, says)


def _dissolved(composition: Composition) -> float | None:
    """Grams a litre of everything but water; None where that cannot be said."""
    if not any(one.amount is None and one.cas == WATER for one in composition.ingredients):
        return None
    total = 0.0
    for one in composition.ingredients:
        if one.amount is None:
            continue
        grams = grams_per_litre(one.amount, one.formula, one.density)
        if grams is None and one.classes != ():
            return None
        total += grams or 0.0
    return total


def grams_per_litre(amount: Quantity, formula: str, density: Quantity | None) -> float | None:
    """An amount per litre of the mixture, in g/L; None if it is no such amount or lacks a density."""
    if amount.dimension == UNITS["g/L"].dimension:
        return amount.to("g/L").number
    if amount.dimension == UNITS["mol/L"].dimension:
        return amount.to("mol/L").number * molar_mass(formula) if formula else None
    if amount.unit in ("mL/L", "% v/v"):
        by_volume = amount.number * (10 if amount.unit == "% v/v" else 1)
        return by_volume * density.to("kg/L").number if density is not None else None
    return None
