"""What a titration says about a bath."""

from typing import Any

from generator.formulas.constants import COPPER_MOLAR_MASS, SULFURIC_ACID_MOLAR_MASS
from generator.formulas.formula import Answer, Example, Formula, Naive
from generator.formulas.inputs import Input
from generator.formulas.library.liquids import (
    SAMPLE_VOLUME,
    TITRANT_FACTOR,
    TITRANT_MOLARITY,
    TITRANT_VOLUME,
)

_OPENSTAX = "OpenStax Chemistry 2e, section 4.5"
_READ = "Read the burette at eye level, at the lower edge of the curve."

RATIO = Input(
    "ratio",
    "ν",
    "moles of what is sought for each mole of titrant",
    "",
    (),
    "0.3 to 3",
    "0.01 to 100",
    "it follows from the equation of the reaction",
    "1",
)
_GIVEN = (TITRANT_VOLUME, TITRANT_MOLARITY, TITRANT_FACTOR, SAMPLE_VOLUME)


def _amount(
    titrant_volume: Any, titrant_molarity: Any, titrant_factor: Any, sample_volume: Any, ratio: Any
) -> Any:
    return ratio * titrant_volume * titrant_molarity * titrant_factor / sample_volume


TITRATION = Formula(
    name="titration",
    title="Concentration from a titration",
    decides="whether a solution is as strong as its label",
    inputs=(*_GIVEN, RATIO),
    answer=Answer("C", "amount in a litre of the sample", "mol/L", ("mmol/L",), decimals=4),
    source=_OPENSTAX,
    function=_amount,
    cautions=(_READ,),
    examples=(
        Example(
            {"titrant_volume": "35.23 mL", "titrant_molarity": "0.250 mol/L", "sample_volume": "50.0 mL"},
            "0.176 mol/L",
            _OPENSTAX,
        ),
    ),
)


def _copper(titrant_volume: Any, titrant_molarity: Any, titrant_factor: Any, sample_volume: Any) -> Any:
    return COPPER_MOLAR_MASS * titrant_volume * titrant_molarity * titrant_factor / sample_volume


COPPER_BY_EDTA = Formula(
    name="copper_by_edta",
    title="Copper by titration with EDTA",
    decides="whether the copper is inside its window",
    inputs=_GIVEN,
    answer=Answer("c_Cu", "copper as metal", "g/L", ("oz/gal",), decimals=1),
    source=f"one EDTA for one copper; arithmetic as in {_OPENSTAX}",
    function=_copper,
    cautions=(_READ, "The same sum serves for thiosulfate: one for one copper."),
    examples=(
        Example(
            {"titrant_volume": "11.52 mL", "titrant_molarity": "0.0500 mol/L", "sample_volume": "2.00 mL"},
            "18.3 g/L",
        ),
    ),
)


def _acid(titrant_volume: Any, titrant_molarity: Any, titrant_factor: Any, sample_volume: Any) -> Any:
    base = titrant_volume * titrant_molarity * titrant_factor
    return SULFURIC_ACID_MOLAR_MASS * base / (2 * sample_volume)


def _one_for_one(titrant_volume: Any, titrant_molarity: Any, titrant_factor: Any, sample_volume: Any) -> Any:
    return SULFURIC_ACID_MOLAR_MASS * titrant_volume * titrant_molarity * titrant_factor / sample_volume


ACID_BY_BASE = Formula(
    name="acid_by_base",
    title="Sulfuric acid by titration with sodium hydroxide",
    decides="whether the acid is inside its window",
    inputs=_GIVEN,
    answer=Answer("c_H2SO4", "sulfuric acid", "g/L", ("oz/gal",), decimals=1),
    source=f"two NaOH for one H2SO4; arithmetic as in {_OPENSTAX}",
    function=_acid,
    cautions=(_READ, "Copper takes base too when the solution is no longer acid: stop at the first change."),
    examples=(
        Example(
            {"titrant_volume": "7.75 mL", "titrant_molarity": "0.500 mol/L", "sample_volume": "1.00 mL"},
            "190.0 g/L",
        ),
    ),
    naive=Naive(_one_for_one, "that one sulfuric acid takes two sodium hydroxide"),
)
