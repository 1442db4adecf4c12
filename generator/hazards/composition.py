"""What a mixture is made of, as the screening takes it, and what it cannot take."""

from dataclasses import dataclass
from typing import Literal

from generator.hazards.classification import HazardClass, SpecificLimit
from generator.hazards.evidence import Evidence
from generator.units import Quantity, Window

Route = Literal["oral", "dermal", "gas", "vapour", "mist"]
LimitSet = Literal["clp", "us"]

WATER = "7732-18-5"


@dataclass(frozen=True, slots=True)
class Ate:
    """A known acute-toxicity estimate: mg/kg (oral, dermal), ppm by volume (gas), mg/L (vapour, mist)."""

    route: Route
    value: float


@dataclass(frozen=True, slots=True)
class Ingredient:
    """One ingredient; `amount` None is the rest. `classes` None: nothing is known; (): known, not classified.

    `strength`: how much of what was bought is the substance (% w/w); `density`: of what was bought.
    `counted_as`: what the amount is counted as ("H2SO4", "chloride"); it needs `formula`, as mol/L does.
    `of_pure`: classes and limits speak of the pure substance; otherwise of the stuff as bought.
    `additive` False: a strong acid or base, or another substance for which the sums may not hold.
    `no_data`: routes of which nothing is known. `evidence` None: stated by the lab, from the sheet.
    """

    name: str
    amount: Quantity | None
    classes: tuple[HazardClass, ...] | None = ()
    limits: tuple[SpecificLimit, ...] = ()
    ate: tuple[Ate, ...] = ()
    m_acute: float | None = None
    m_chronic: float | None = None
    supplements: tuple[str, ...] = ()
    cas: str = ""
    formula: str = ""
    counted_as: str = ""
    strength: Quantity | None = None
    density: Quantity | None = None
    of_pure: bool = False
    ph: Window | None = None
    additive: bool = True
    gas: bool = False
    no_data: tuple[Route, ...] = ()
    evidence: Evidence | None = None
    notes: tuple[str, ...] = ()

    def with_short(self, short: str) -> tuple[HazardClass, ...]:
        """Its classes of one short name."""
        return tuple(one for one in self.classes or () if one.short == short)

    def lowest_limit(self, short: str, categories: tuple[str, ...] = ()) -> float | None:
        """Where its specific limits for a class (and some categories) begin, % w/w; None if it has none."""
        lows = [
            limit.low
            for limit in self.limits
            if limit.hazard_class.short == short
            and (not categories or limit.hazard_class.category in categories)
        ]
        return min(lows, default=None)


@dataclass(frozen=True, slots=True)
class Composition:
    """A mixture made in the lab, with density and pH if known; `thin`: viscosity up to 20.5 mm2/s at 40 degC.

    `limit_set`: which of the limits that the UN GHS leaves to the authorities are used.
    """

    name: str
    ingredients: tuple[Ingredient, ...]
    density: Quantity | None = None
    ph: Window | None = None
    thin: bool | None = None
    limit_set: LimitSet = "clp"


@dataclass(frozen=True, slots=True)
class ScreeningProblem:
    """Why there can be no screening: the ingredient ("" for the whole), what is wrong, what to do.

    `nonsense` where the composition cannot be true; otherwise something is not stated.
    """

    ingredient: str
    message: str
    fix: str
    nonsense: bool = False


@dataclass(frozen=True, slots=True)
class NotScreened:
    """No screening was made, and why."""

    name: str
    problems: tuple[ScreeningProblem, ...]
