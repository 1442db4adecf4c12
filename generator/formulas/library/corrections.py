"""Correcting the copper and the chloride of an acid copper bath."""

from dataclasses import replace
from typing import Any

from generator.formulas.constants import (
    CHLORINE_MOLAR_MASS,
    COPPER_MOLAR_MASS,
    COPPER_SULFATE_MOLAR_MASS,
    HYDROCHLORIC_ACID_MOLAR_MASS,
)
from generator.formulas.formula import Answer, Example, Formula, Naive, Requirement
from generator.formulas.inputs import Input
from generator.formulas.library.liquids import BATH_VOLUME, STOCK_DENSITY, STOCK_STRENGTH

_BY_STAFF = "Done by staff, in the hood or with the extraction on, after the supplier's safety data sheet."
_MASS_BALANCE = "mass balance"

COPPER_TARGET = Input(
    "copper_target",
    "c_Cu target",
    "copper wanted in the bath, as metal",
    "g/L",
    ("oz/gal",),
    "15 to 60 g/L",
    "0 to 200 g/L",
    "more copper does not dissolve",
)
COPPER_FOUND = Input(
    "copper_found",
    "c_Cu found",
    "copper found in the bath, as metal",
    "g/L",
    ("oz/gal",),
    "15 to 60 g/L",
    "0 to 200 g/L",
    "more copper does not dissolve",
)
SALT = Input(
    "salt",
    "c_salt",
    "copper sulfate pentahydrate in the bath",
    "g/L",
    ("oz/gal",),
    "50 to 250 g/L",
    "0 to 400 g/L",
    "more does not dissolve",
)


def _copper_in_salt(salt: Any) -> Any:
    return salt * COPPER_MOLAR_MASS / COPPER_SULFATE_MOLAR_MASS


COPPER_IN_SALT = Formula(
    name="copper_in_salt",
    title="Copper in copper sulfate",
    decides="what the make-up means as metal",
    inputs=(SALT,),
    answer=Answer("c_Cu", "copper as metal", "g/L", ("oz/gal",), decimals=2),
    source="ratio of molar masses, CuSO4·5H2O",
    function=_copper_in_salt,
    cautions=("For the blue salt with five waters, not for the white one.",),
    examples=(Example({"salt": "75 g/L"}, "19.09 g/L"),),
)


def _salt_to_add(copper_found: Any, copper_target: Any, bath_volume: Any) -> Any:
    missing = (copper_target - copper_found) * bath_volume
    return missing * COPPER_SULFATE_MOLAR_MASS / COPPER_MOLAR_MASS


def _as_metal(copper_found: Any, copper_target: Any, bath_volume: Any) -> Any:
    return (copper_target - copper_found) * bath_volume


def _lacks_copper(copper_found: Any, copper_target: Any) -> Any:
    return copper_found <= copper_target


COPPER_CORRECTION = Formula(
    name="copper_correction",
    title="Copper sulfate to add",
    decides="how much salt brings the copper up",
    inputs=(COPPER_FOUND, COPPER_TARGET, BATH_VOLUME),
    answer=Answer("m_salt", "copper sulfate pentahydrate", "g", ("kg", "oz"), decimals=0),
    source="ratio of molar masses, CuSO4·5H2O",
    function=_salt_to_add,
    cautions=(_BY_STAFF, "Take it from the bath keeper's sheet, and enter it there."),
    who="staff",
    examples=(
        Example({"copper_found": "16.5 g/L", "copper_target": "18.3 g/L", "bath_volume": "42 L"}, "297 g"),
    ),
    requires=(Requirement(_lacks_copper, "there is more copper than wanted: use copper_dilution"),),
    naive=Naive(_as_metal, "that only a quarter of the salt is copper"),
)


def _to_replace(copper_found: Any, copper_target: Any, bath_volume: Any) -> Any:
    return bath_volume * (1 - copper_target / copper_found)


def _has_too_much(copper_found: Any, copper_target: Any) -> Any:
    return copper_target <= copper_found


COPPER_DILUTION = Formula(
    name="copper_dilution",
    title="Bath to take out and replace",
    decides="how much bath goes to the waste drum and is replaced by acid and water",
    inputs=(COPPER_FOUND, COPPER_TARGET, BATH_VOLUME),
    answer=Answer("V_out", "volume to take out and replace", "L", ("mL", "gal"), decimals=1),
    source=_MASS_BALANCE,
    function=_to_replace,
    cautions=(_BY_STAFF, "What is taken out goes to its own drum, never to a drain."),
    who="staff",
    examples=(
        Example({"copper_found": "24 g/L", "copper_target": "18.3 g/L", "bath_volume": "42 L"}, "10.0 L"),
    ),
    requires=(Requirement(_has_too_much, "there is less copper than wanted: use copper_correction"),),
)

_CHLORIDE = ("g/L",)
CHLORIDE_TARGET = Input(
    "chloride_target",
    "c_Cl target",
    "chloride wanted in the bath",
    "mg/L",
    _CHLORIDE,
    "30 to 100 mg/L",
    "0 to 1000 mg/L",
    "more chloride dulls any copper bath",
)
CHLORIDE_FOUND = Input(
    "chloride_found",
    "c_Cl found",
    "chloride found in the bath",
    "mg/L",
    _CHLORIDE,
    "0 to 100 mg/L",
    "0 to 1000 mg/L",
    "more chloride dulls any copper bath",
)


def _acid_for_chloride(
    chloride_found: Any, chloride_target: Any, bath_volume: Any, stock_strength: Any, stock_density: Any
) -> Any:
    chloride = (chloride_target - chloride_found) * bath_volume
    return chloride * HYDROCHLORIC_ACID_MOLAR_MASS / (CHLORINE_MOLAR_MASS * stock_strength * stock_density)


def _lacks_chloride(chloride_found: Any, chloride_target: Any) -> Any:
    return chloride_found <= chloride_target


CHLORIDE_CORRECTION = Formula(
    name="chloride_correction",
    title="Hydrochloric acid to add for chloride",
    decides="how many millilitres to pipette",
    inputs=(
        CHLORIDE_FOUND,
        CHLORIDE_TARGET,
        BATH_VOLUME,
        replace(STOCK_STRENGTH, default="37 % w/w"),
        replace(STOCK_DENSITY, default="1.18 kg/L"),
    ),
    answer=Answer("V_HCl", "hydrochloric acid", "mL", ("uL", "L"), decimals=2),
    source="ratio of molar masses, HCl and Cl",
    function=_acid_for_chloride,
    cautions=(_BY_STAFF, "Too much cannot be taken out again. Add half, analyse, add the rest."),
    who="staff",
    examples=(
        Example(
            {"chloride_found": "40 mg/L", "chloride_target": "60 mg/L", "bath_volume": "42 L"}, "1.98 mL"
        ),
    ),
    requires=(Requirement(_lacks_chloride, "there is more chloride than wanted: it cannot be taken out"),),
)
