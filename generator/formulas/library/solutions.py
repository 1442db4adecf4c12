"""Diluting stock solutions by amount, by mass and by label."""

from typing import Any

from generator.formulas.formula import Answer, Example, Formula, Naive, Requirement
from generator.formulas.library.liquids import (
    MOLAR_MASS,
    STOCK_DENSITY,
    STOCK_MOLARITY,
    STOCK_STRENGTH,
    WANTED_DENSITY,
    WANTED_MASS,
    WANTED_MOLARITY,
    WANTED_STRENGTH,
    WANTED_VOLUME,
)

_OPENSTAX = "OpenStax Chemistry 2e, sections 3.3 and 3.4"
_FILL_UP = "Put most of the water in first, then the stock, then fill up to the mark."
_ACID_INTO_WATER = "Acid into water, slowly, with stirring. Never water into acid."


def _by_amount(wanted_molarity: Any, wanted_volume: Any, stock_molarity: Any) -> Any:
    return wanted_molarity * wanted_volume / stock_molarity


def _stock_is_stronger(wanted_molarity: Any, stock_molarity: Any) -> Any:
    return wanted_molarity <= stock_molarity


DILUTION = Formula(
    name="dilution",
    title="Stock for a dilution",
    decides="how much stock to measure out",
    inputs=(WANTED_MOLARITY, WANTED_VOLUME, STOCK_MOLARITY),
    answer=Answer("V_stock", "volume of stock", "L", ("mL",), decimals=3),
    source=f"C1 V1 = C2 V2, {_OPENSTAX}",
    function=_by_amount,
    cautions=(_FILL_UP, _ACID_INTO_WATER),
    examples=(
        Example(
            {"wanted_molarity": "0.100 mol/L", "wanted_volume": "5.00 L", "stock_molarity": "1.59 mol/L"},
            "0.314 L",
            "OpenStax Chemistry 2e, section 3.3",
        ),
    ),
    requires=(Requirement(_stock_is_stronger, "the stock is weaker than what is wanted"),),
)


def _by_mass(wanted_strength: Any, wanted_mass: Any, stock_strength: Any) -> Any:
    return wanted_strength * wanted_mass / stock_strength


def _label_is_stronger(wanted_strength: Any, stock_strength: Any) -> Any:
    return wanted_strength <= stock_strength


DILUTION_BY_MASS = Formula(
    name="dilution_by_mass",
    title="Stock for a dilution, on the balance",
    decides="how much stock to weigh",
    inputs=(WANTED_STRENGTH, WANTED_MASS, STOCK_STRENGTH),
    answer=Answer("m_stock", "mass of stock", "g", ("kg",), decimals=1),
    source=f"w1 m1 = w2 m2, {_OPENSTAX}",
    function=_by_mass,
    cautions=("A strength by mass (% w/w) is not a strength by volume (% v/v).", _ACID_INTO_WATER),
    examples=(
        Example(
            {"wanted_strength": "10.0 % w/w", "wanted_mass": "400.0 g", "stock_strength": "68.0 % w/w"},
            "58.8 g",
            "OpenStax Chemistry 2e, section 3.4",
        ),
    ),
    requires=(Requirement(_label_is_stronger, "the stock is weaker than what is wanted"),),
)


def _by_density(
    wanted_strength: Any, wanted_density: Any, wanted_volume: Any, stock_strength: Any, stock_density: Any
) -> Any:
    return wanted_strength * wanted_density * wanted_volume / (stock_strength * stock_density)


def _as_if_by_volume(wanted_strength: Any, wanted_volume: Any, stock_strength: Any) -> Any:
    return wanted_strength * wanted_volume / stock_strength


DILUTION_BY_DENSITY = Formula(
    name="dilution_by_density",
    title="Stock for a dilution, from label and density",
    decides="how much stock to measure out when both strengths are by mass",
    inputs=(WANTED_STRENGTH, WANTED_DENSITY, WANTED_VOLUME, STOCK_STRENGTH, STOCK_DENSITY),
    answer=Answer("V_stock", "volume of stock", "L", ("mL", "gal"), decimals=3),
    source=f"w1 ρ1 V1 = w2 ρ2 V2, {_OPENSTAX}",
    function=_by_density,
    cautions=("A strength by mass (% w/w) is not a strength by volume (% v/v).", _ACID_INTO_WATER),
    examples=(
        Example(
            {
                "wanted_strength": "10 % w/w",
                "wanted_density": "1.066 kg/L",
                "wanted_volume": "2 L",
                "stock_strength": "96 % w/w",
                "stock_density": "1.84 kg/L",
            },
            "0.121 L",
        ),
    ),
    requires=(Requirement(_label_is_stronger, "the stock is weaker than what is wanted"),),
    naive=Naive(_as_if_by_volume, "that strong and weak solutions have different densities"),
)


def _from_label(stock_strength: Any, stock_density: Any, molar_mass: Any) -> Any:
    return stock_strength * stock_density / molar_mass


LABEL_TO_MOLARITY = Formula(
    name="label_to_molarity",
    title="Amount in a litre from the label",
    decides="how strong a bottle is in mol/L",
    inputs=(STOCK_STRENGTH, STOCK_DENSITY, MOLAR_MASS),
    answer=Answer("C_stock", "amount in a litre of the stock", "mol/L", ("mmol/L",), decimals=2),
    source=f"C = w ρ / M, {_OPENSTAX}",
    function=_from_label,
    cautions=("An opened bottle of a volatile acid or of ammonia has become weaker: titrate it.",),
    examples=(
        Example(
            {"stock_strength": "96 % w/w", "stock_density": "1.84 kg/L", "molar_mass": "98.079 g/mol"},
            "18.01 mol/L",
        ),
    ),
)
