"""The density of sulfuric acid from its strength and temperature."""

from typing import Any

from generator.formulas.formula import Answer, Example, Formula
from generator.formulas.inputs import Input
from generator.formulas.symbols import constant
from generator.units import UNITS

_MYHRE = "Myhre, Nielsen and Saastad, J. Chem. Eng. Data 43 (1998) 617, doi 10.1021/je980013g, equation 2"

# Powers of the mass fraction downwards, powers of the temperature in degrees Celsius across; kg/m3.
_COEFFICIENTS = (
    (999.8426, 0.03345402, -0.005691304),
    (547.2659, -5.300445, 0.01187671, 0.0005990008),
    (5262.95, 37.20445, 0.1201909, -0.004148594, 1.197973e-5),
    (-62139.58, -287.767, -0.4064638, 0.01119488, 3.607768e-5),
    (409029.3, 1270.854, 0.326971, -0.01377435, -2.633585e-5),
    (-1596989.0, -3062.836, 0.1366499, 0.006373031),
    (3857411.0, 4083.714, -0.1927785),
    (-5808064.0, -2844.401),
    (5301976.0, 809.1053),
    (-2682616.0,),
    (576428.8,),
)
_ZERO = constant("nothing on the Celsius scale", "θ_0", 273.15, "K", "definition", UNITS["K"].dimension)
_KELVIN = constant("one kelvin", "K", 1.0, "K", "unit", UNITS["K"].dimension)
_DENSITY = constant("one kilogram in a cubic metre", "ρ_1", 1.0, "kg/m3", "unit", UNITS["kg/m3"].dimension)

ACID_STRENGTH = Input(
    "acid_strength",
    "w_acid",
    "strength of the acid by mass",
    "% w/w",
    ("%",),
    "10 to 90 % w/w",
    "10 to 90 % w/w",
    "the measurements behind the formula end there",
)
ACID_TEMPERATURE = Input(
    "acid_temperature",
    "θ_acid",
    "temperature of the acid",
    "degC",
    ("degF", "K"),
    "15 to 30 degC",
    "0 to 50 degC",
    "the measurements behind the formula end there",
    "20 degC",
)


def _density(acid_strength: Any, acid_temperature: Any) -> Any:
    warmth = (acid_temperature - _ZERO) / _KELVIN
    value: Any = 0
    for row in reversed(_COEFFICIENTS):
        term: Any = 0
        for coefficient in reversed(row):
            term = term * warmth + coefficient
        value = value * acid_strength + term
    return value * _DENSITY


ACID_DENSITY = Formula(
    name="acid_density",
    title="Density of sulfuric acid",
    decides="the density that a dilution by label and density asks for",
    inputs=(ACID_STRENGTH, ACID_TEMPERATURE),
    answer=Answer("ρ", "density of the acid", "kg/L", ("g/cm3", "kg/m3"), decimals=3),
    source=_MYHRE,
    function=_density,
    cautions=("Pure sulfuric acid and water only. A bath with salts in it is heavier.",),
    examples=(Example({"acid_strength": "30 % w/w", "acid_temperature": "20 degC"}, "1.219 kg/L", _MYHRE),),
    in_words="a polynomial in strength and temperature, fitted to measurements",
)
