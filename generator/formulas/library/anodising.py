"""Anodising of aluminium by the rule of 720."""

from typing import Any

from generator.formulas.formula import Answer, Example, Formula
from generator.formulas.inputs import Input
from generator.formulas.library.electricity import DENSITY
from generator.formulas.library.workpiece import AREA
from generator.formulas.symbols import constant
from generator.units import UNITS
from generator.units.quantity import to_si

_RULE = "Westre, How to Apply the 720 Rule (finishingandcoating.com), table 1"
_UNIT = "A min/(ft2 mil)"
RULE_OF_720 = constant("rule of 720", "k_720", to_si(720, _UNIT), _UNIT, _RULE, UNITS[_UNIT].dimension)

OXIDE = Input(
    "oxide",
    "δ_oxide",
    "oxide thickness wanted",
    "um",
    ("mil", "mm"),
    "5 to 60 um",
    "0.1 to 200 um",
    "a thicker oxide dissolves as fast as it grows",
)
_CAUTIONS = (
    "A rule of thumb for sulfuric acid near 20 °C. Measure the first part of every load.",
    "Alloy, temperature and age of the bath change it.",
)


def _time(oxide: Any, density: Any) -> Any:
    return RULE_OF_720 * oxide / density


ANODISE_TIME = Formula(
    name="anodise_time",
    title="Time for anodising",
    decides="the setting of the timer",
    inputs=(OXIDE, DENSITY),
    answer=Answer("t", "time with current on", "min", ("h",), decimals=0),
    source=_RULE,
    function=_time,
    cautions=_CAUTIONS,
    examples=(
        Example({"oxide": "1 mil", "density": "12 A/ft2"}, "60 min", _RULE),
        Example({"oxide": "1 mil", "density": "18 A/ft2"}, "40 min", _RULE),
    ),
)


def _charge(oxide: Any, area: Any) -> Any:
    return RULE_OF_720 * oxide * area


ANODISE_CHARGE = Formula(
    name="anodise_charge",
    title="Charge for anodising",
    decides="when to stop where the current is not steady",
    inputs=(OXIDE, AREA),
    answer=Answer("Q", "charge to pass", "A h", ("A min",), decimals=1),
    source=_RULE,
    function=_charge,
    cautions=_CAUTIONS,
    # 720 A min for one square foot and one mil are 12 A h.
    examples=(Example({"oxide": "1 mil", "area": "1 ft2"}, "12.0 A h"),),
)
