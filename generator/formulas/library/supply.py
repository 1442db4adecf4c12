"""Anodes, rectifier and heater."""

from typing import Any

from generator.formulas.formula import Answer, Example, Formula, Naive
from generator.formulas.inputs import Input
from generator.formulas.library.electricity import CURRENT
from generator.formulas.library.liquids import BATH_DENSITY, BATH_VOLUME, SPECIFIC_HEAT
from generator.formulas.library.workpiece import AREA

ANODE_AREA = Input(
    "anode_area",
    "A_anode",
    "anode area that faces the part",
    "dm2",
    ("cm2", "m2", "ft2"),
    "1 to 50 dm2",
    "0.001 to 10000 dm2",
    "an anode has an area",
)


def _anodes(anode_area: Any, area: Any) -> Any:
    return anode_area / area


ANODE_RATIO = Formula(
    name="anode_ratio",
    title="Anode area over plated area",
    decides="whether the anodes are to be cleaned or added to",
    inputs=(ANODE_AREA, AREA),
    answer=Answer("k_anode", "anode area over plated area", "", decimals=1),
    source="definition; 1 to 2 is common practice, no source",
    function=_anodes,
    cautions=("Current off first. Anodes are touched by staff only.",),
    examples=(Example({"anode_area": "6 dm2", "area": "2.57 dm2"}, "2.3"),),
)

SUPPLY_MOST = Input(
    "supply_most",
    "I_most",
    "most that the supply gives",
    "A",
    ("mA", "kA"),
    "1 to 50 A",
    "0.001 to 100000 A",
    "a supply gives something",
)


def _headroom(supply_most: Any, current: Any) -> Any:
    return (supply_most - current) / supply_most


SUPPLY_HEADROOM = Formula(
    name="supply_headroom",
    title="What the supply has left",
    decides="whether a second board may hang beside the first",
    inputs=(SUPPLY_MOST, CURRENT),
    answer=Answer("q", "part of the supply that is left", "%", decimals=0, toward="down"),
    source="definition",
    function=_headroom,
    cautions=("Below nothing means that the supply cannot give this current.",),
    examples=(Example({"supply_most": "12 A", "current": "5.0 A"}, "58 %"),),
)

START_TEMPERATURE = Input(
    "start_temperature",
    "θ_start",
    "temperature of the bath now",
    "degC",
    ("degF", "K"),
    "15 to 30 degC",
    "-10 to 120 degC",
    "a bath is liquid",
)
BATH_TEMPERATURE = Input(
    "bath_temperature",
    "θ_bath",
    "temperature that the bath works at",
    "degC",
    ("degF", "K"),
    "25 to 60 degC",
    "-10 to 120 degC",
    "a bath is liquid",
)
HEATER_POWER = Input(
    "heater_power",
    "P",
    "power of the heater",
    "W",
    ("kW",),
    "100 to 3000 W",
    "1 to 1000000 W",
    "a heater has a power",
)
HEAT_KEPT = Input(
    "heat_kept",
    "η_heat",
    "share of the heat that stays in the bath",
    "%",
    (),
    "60 to 95 %",
    "1 to 100 %",
    "no more stays than goes in",
    "80 %",
)


def _warm_up(
    bath_volume: Any,
    bath_density: Any,
    specific_heat: Any,
    start_temperature: Any,
    bath_temperature: Any,
    heater_power: Any,
    heat_kept: Any,
) -> Any:
    heat = bath_volume * bath_density * specific_heat * (bath_temperature - start_temperature)
    return heat / (heater_power * heat_kept)


def _no_losses(
    bath_volume: Any,
    bath_density: Any,
    specific_heat: Any,
    start_temperature: Any,
    bath_temperature: Any,
    heater_power: Any,
) -> Any:
    heat = bath_volume * bath_density * specific_heat * (bath_temperature - start_temperature)
    return heat / heater_power


HEATER_WARM_UP = Formula(
    name="heater_warm_up",
    title="Time to warm a bath up",
    decides="when to switch the heater on",
    inputs=(
        BATH_VOLUME,
        BATH_DENSITY,
        SPECIFIC_HEAT,
        START_TEMPERATURE,
        BATH_TEMPERATURE,
        HEATER_POWER,
        HEAT_KEPT,
    ),
    answer=Answer("t", "time to warm up", "min", ("h",), decimals=0, toward="up"),
    source="heat = mass × specific heat × warming; the share that stays is common practice, no source",
    function=_warm_up,
    cautions=("Lid on while it warms up. Never leave a heater in a bath that may run dry.",),
    examples=(
        Example(
            {
                "bath_volume": "18 L",
                "bath_density": "1.02 kg/L",
                "specific_heat": "4.0 J/(g K)",
                "start_temperature": "20 degC",
                "bath_temperature": "45 degC",
                "heater_power": "1000 W",
                "heat_kept": "85 %",
            },
            "36 min",
        ),
    ),
    naive=Naive(_no_losses, "the heat that the bath loses"),
)
