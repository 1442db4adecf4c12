"""What charge lays down and uses up."""

from typing import Any

from generator.formulas.constants import FARADAY, METAL
from generator.formulas.formula import Answer, Example, Formula, Naive
from generator.formulas.inputs import Input
from generator.formulas.library.electricity import CHARGE, EFFICIENCY
from generator.formulas.library.workpiece import AREA, COPPER, THROWING_POWER

_FARADAY_LAW = "Faraday's law of electrolysis, as in OpenStax Chemistry 2e, section 17.7"


def _thickness(charge: Any, area: Any, efficiency: Any, metal: Any) -> Any:
    return metal.molar_mass * charge * efficiency / (metal.charges * FARADAY * metal.density * area)


def _all_charge_plates(charge: Any, area: Any, metal: Any) -> Any:
    return metal.molar_mass * charge / (metal.charges * FARADAY * metal.density * area)


THICKNESS_FROM_CHARGE = Formula(
    name="thickness_from_charge",
    title="Thickness from the charge that has flowed",
    decides="go on or stop after an interruption",
    inputs=(CHARGE, AREA, EFFICIENCY, METAL),
    answer=Answer("δ", "metal thickness on the face", "um", ("mil", "mm"), decimals=1),
    source=_FARADAY_LAW,
    function=_thickness,
    cautions=(
        "Charge is the average current times the minutes that it flowed.",
        "This is the average on the face. The middle of a hole gets less.",
    ),
    # 4.8 A for 50 min are 240 A min, 4.0 A h.
    examples=(Example({"charge": "240 A min", "area": "2.60 dm2", "efficiency": "97 %"}, "19.7 um"),),
    naive=Naive(_all_charge_plates, "that a part of the charge makes no metal"),
)


def _in_hole(copper: Any, throwing_power: Any) -> Any:
    return copper * throwing_power


HOLE_THICKNESS = Formula(
    name="hole_thickness",
    title="Thickness in the hole",
    decides="whether the wall of a hole has enough",
    inputs=(COPPER, THROWING_POWER),
    answer=Answer("δ_hole", "metal thickness in the middle of a hole", "um", ("mil", "mm"), decimals=1),
    source="definition of throwing power",
    function=_in_hole,
    cautions=("Throwing power falls with deeper holes and with more current. Measure it on a section.",),
    examples=(Example({"copper": "19.7 um", "throwing_power": "78 %"}, "15.4 um"),),
)


def _mass(charge: Any, metal: Any) -> Any:
    return metal.molar_mass * charge / (metal.charges * FARADAY)


COPPER_USED = Formula(
    name="copper_used",
    title="Metal that the charge moves",
    decides="when the anodes are due",
    inputs=(CHARGE, METAL),
    answer=Answer("m", "mass of metal", "g", ("kg", "oz"), decimals=3),
    source=_FARADAY_LAW,
    function=_mass,
    cautions=("For metal that dissolves from anodes at full efficiency.",),
    examples=(Example({"charge": "1 A h"}, "1.185 g"),),
)

DOSE = Input(
    "dose",
    "k_dose",
    "additive for each charge, from the supplier's sheet",
    "mL/(A h)",
    (),
    "0.05 to 1 mL/(A h)",
    "0.0001 to 100 mL/(A h)",
    "no additive is used faster",
)


def _additive(dose: Any, charge: Any) -> Any:
    return dose * charge


ADDITIVE_BY_CHARGE = Formula(
    name="additive_by_charge",
    title="Additive for the charge that has flowed",
    decides="how much additive to dose",
    inputs=(DOSE, CHARGE),
    answer=Answer("V_additive", "additive", "mL", ("L",), decimals=1),
    source="definition of a dose by charge",
    function=_additive,
    cautions=("Done by the bath keeper. Too much cannot be taken out again.",),
    who="staff",
    examples=(Example({"dose": "0.20 mL/(A h)", "charge": "120 A h"}, "24.0 mL"),),
)
