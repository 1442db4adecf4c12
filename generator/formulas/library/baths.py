"""Making up baths and keeping their strength and level."""

from dataclasses import replace
from typing import Any

from generator.formulas.constants import SULFURIC_ACID_MOLAR_MASS
from generator.formulas.formula import Answer, Example, Formula, Naive, Requirement
from generator.formulas.library.liquids import (
    BATH_DENSITY,
    BATH_VOLUME,
    DROP,
    FOUND,
    HEAT_OF_MIXING,
    PURITY,
    SPECIFIC_HEAT,
    STOCK_CONCENTRATION,
    STOCK_DENSITY,
    STOCK_STRENGTH,
    SURFACE,
    TARGET,
)

_ACID_INTO_WATER = "Acid into water, slowly, with stirring. Never water into acid."
_BY_STAFF = "Made up by staff, in the hood or with the extraction on, after the supplier's safety data sheet."
_LEVEL = "Look first whether the bath has room for what is added."
_MASS_BALANCE = "mass balance"


def _solid(target: Any, bath_volume: Any, purity: Any) -> Any:
    return target * bath_volume / purity


MAKE_UP_SOLID = Formula(
    name="make_up_solid",
    title="Solid for a new bath",
    decides="how much to weigh",
    inputs=(TARGET, BATH_VOLUME, PURITY),
    answer=Answer("m", "mass to weigh", "g", ("kg", "lb"), decimals=1),
    source=_MASS_BALANCE,
    function=_solid,
    cautions=(_BY_STAFF, "Dissolve in less water, then fill up to the mark."),
    who="staff",
    examples=(
        Example({"target": "72 g/L", "bath_volume": "42 L"}, "3024.0 g"),
        Example({"target": "110.9 g/L", "bath_volume": "1 L", "purity": "97 % w/w"}, "114.3 g"),
    ),
)


def _liquid(target: Any, bath_volume: Any, stock_strength: Any, stock_density: Any) -> Any:
    return target * bath_volume / (stock_strength * stock_density)


def _as_if_pure(target: Any, bath_volume: Any, stock_density: Any) -> Any:
    return target * bath_volume / stock_density


MAKE_UP_LIQUID = Formula(
    name="make_up_liquid",
    title="Concentrated liquid for a new bath",
    decides="how much to measure out",
    inputs=(TARGET, BATH_VOLUME, STOCK_STRENGTH, STOCK_DENSITY),
    answer=Answer("V_stock", "volume of the concentrate", "L", ("mL", "gal"), decimals=2),
    source=_MASS_BALANCE,
    function=_liquid,
    cautions=(
        _ACID_INTO_WATER,
        _BY_STAFF,
        "A strength by mass (% w/w) is not a strength by volume (% v/v).",
    ),
    who="staff",
    examples=(
        Example(
            {
                "target": "190 g/L",
                "bath_volume": "42 L",
                "stock_strength": "96 % w/w",
                "stock_density": "1.84 kg/L",
            },
            "4.52 L",
        ),
    ),
    naive=Naive(_as_if_pure, "that the concentrate is not pure"),
)


def _warming(target: Any, heat_of_mixing: Any, bath_density: Any, specific_heat: Any) -> Any:
    return target * heat_of_mixing / (SULFURIC_ACID_MOLAR_MASS * bath_density * specific_heat)


MIXING_HEAT = Formula(
    name="mixing_heat",
    title="Warming while sulfuric acid is mixed in",
    decides="in how many portions, and how long to wait between them",
    inputs=(replace(TARGET, usual="10 to 250 g/L"), HEAT_OF_MIXING, BATH_DENSITY, SPECIFIC_HEAT),
    answer=Answer(
        "Δθ", "warming if all goes in at once", "delta degC", ("delta degF",), decimals=0, toward="up"
    ),
    source="n ΔH / (V ρ c), in which the volume cancels; heat of mixing and specific heat from memory",
    function=_warming,
    cautions=(
        "An estimate. Add in portions, stir, and wait until the vessel is no warmer than your hand.",
        _ACID_INTO_WATER,
        _BY_STAFF,
    ),
    who="staff",
    examples=(
        Example(
            {"target": "190 g/L", "bath_density": "1.12 kg/L", "specific_heat": "3.6 J/(g K)"},
            "36.0 delta degC",
        ),
    ),
)


def _raise(bath_volume: Any, found: Any, target: Any, stock_concentration: Any) -> Any:
    return bath_volume * (target - found) / (stock_concentration - target)


def _volume_forgotten(bath_volume: Any, found: Any, target: Any, stock_concentration: Any) -> Any:
    return bath_volume * (target - found) / stock_concentration


def _is_weak(found: Any, target: Any) -> Any:
    return found <= target


def _stock_is_stronger(target: Any, stock_concentration: Any) -> Any:
    return target < stock_concentration


RAISE_STRENGTH = Formula(
    name="raise_strength",
    title="Stock to bring a bath up to strength",
    decides="how much stock to add, and whether there is room for it",
    inputs=(BATH_VOLUME, FOUND, TARGET, STOCK_CONCENTRATION),
    answer=Answer("V_add", "volume of stock to add", "L", ("mL", "gal"), decimals=2),
    source=f"{_MASS_BALANCE}, with the volume that is added",
    function=_raise,
    cautions=(_LEVEL, _ACID_INTO_WATER, _BY_STAFF),
    who="staff",
    examples=(
        Example(
            {
                "bath_volume": "42 L",
                "found": "170 g/L",
                "target": "190 g/L",
                "stock_concentration": "1766.4 g/L",
            },
            "0.53 L",
        ),
    ),
    requires=(
        Requirement(_is_weak, "the bath is stronger than wanted: it is to be diluted, not raised"),
        Requirement(_stock_is_stronger, "the stock is no stronger than the bath is to be"),
    ),
    naive=Naive(_volume_forgotten, "that the added stock takes up room too"),
)


def _top_up(surface: Any, drop: Any) -> Any:
    return surface * drop


EVAPORATION_TOP_UP = Formula(
    name="evaporation_top_up",
    title="Water that has evaporated",
    decides="how much deionised water to fill in",
    inputs=(SURFACE, DROP),
    answer=Answer("V_water", "deionised water", "L", ("mL", "gal"), decimals=2),
    source="geometry of a tank with straight walls",
    function=_top_up,
    cautions=("Deionised water only. A bath topped up with anything else is a changed bath.",),
    examples=(Example({"surface": "12 dm2", "drop": "8 mm"}, "0.96 L"),),
)
