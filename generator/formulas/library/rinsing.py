"""What is dragged from bath to bath, and what rinsing does about it."""

from typing import Any

from generator.formulas.formula import Answer, Example, Formula, Naive
from generator.formulas.inputs import Input
from generator.formulas.library.liquids import BATH_VOLUME
from generator.formulas.library.workpiece import AREA
from generator.formulas.words import choose, exp, log, product, smallest

_SERIES = (
    "mass balance of counter-current rinses (state pollution-prevention programme, p2infohouse.org 01/00051)"
)

FILM = Input(
    "film",
    "V_film",
    "liquid that stays on each area of wet part",
    "mL/dm2",
    ("L/m2", "mL/m2"),
    "0.5 to 3 mL/dm2",
    "0.01 to 100 mL/dm2",
    "more drips off by itself",
    "1 mL/dm2",
)
PARTS = Input(
    "parts", "N", "how many parts", "", (), "1 to 100", "0 to 100000", "parts are counted", "1", whole=True
)


def _drag_out(film: Any, area: Any, parts: Any) -> Any:
    return film * area * parts


DRAG_OUT = Formula(
    name="drag_out",
    title="Liquid that leaves with the parts",
    decides="how fast a bath loses its contents and a rinse fills up",
    inputs=(FILM, AREA, PARTS),
    answer=Answer("V_drag", "liquid carried out", "mL", ("L", "gal"), decimals=1),
    source="definition; the film for each area is common practice, no source",
    function=_drag_out,
    cautions=("A slow lift and a full drip halve it. Measure it once for your own rack.",),
    examples=(Example({"film": "1.5 mL/dm2", "area": "2.57 dm2", "parts": 10}, "38.6 mL"),),
)

WATER_RATIO = Input(
    "water_ratio",
    "r",
    "rinse water for each volume carried in",
    "",
    (),
    "10 to 10000",
    "1.01 to 1000000",
    "less water than is carried in does not rinse",
)
STAGES = Input(
    "stages",
    "n",
    "rinses one after the other, water against the parts",
    "",
    (),
    "1 to 3",
    "1 to 4",
    "more than four rinses stand on no line of ours",
    "1",
    whole=True,
)


def _series(water_ratio: Any, stages: Any) -> Any:
    return (product(0, stages, lambda _: water_ratio) - 1) / (water_ratio - 1)


def _last_term_alone(water_ratio: Any, stages: Any) -> Any:
    return product(1, stages, lambda _: water_ratio)


RINSE_RATIO = Formula(
    name="rinse_ratio",
    title="What counter-current rinses achieve",
    decides="how often weaker the last rinse is than the bath",
    inputs=(WATER_RATIO, STAGES),
    answer=Answer("R", "strength of the bath over that of the last rinse", "", decimals=0, toward="down"),
    source=_SERIES,
    function=_series,
    cautions=("For a film that mixes fully in each rinse. A rinse without stirring does less.",),
    examples=(
        Example({"water_ratio": "2000", "stages": 1}, "2001"),
        Example({"water_ratio": "81.65", "stages": 2}, "6749"),
    ),
    naive=Naive(_last_term_alone, "the smaller terms of the series (the usual approximation)"),
)

CARRIED_IN = Input(
    "carried_in",
    "c_0",
    "concentration of what the parts carry in",
    "g/L",
    ("mg/L", "oz/gal"),
    "1 to 300 g/L",
    "0.001 to 2000 g/L",
    "no bath holds more",
)
RINSE_LIMIT = Input(
    "rinse_limit",
    "c_n",
    "concentration that the last rinse may have",
    "mg/L",
    ("g/L", "oz/gal"),
    "5 to 100 mg/L",
    "0.001 to 100000 mg/L",
    "cleaner is not to be had with water",
)


def _whole_ratio(carried_in: Any, rinse_limit: Any, stages: Any) -> Any:
    wanted = carried_in / rinse_limit

    def dilution(i: Any) -> Any:
        three = 1 + i * (1 + i * (1 + i))
        upper = choose(stages > 3, 1 + i * three, three)
        return choose(stages > 1, choose(stages > 2, upper, 1 + i * (1 + i)), 1 + i)

    return smallest(1, 9999, lambda i: dilution(i) >= wanted)


def _root(carried_in: Any, rinse_limit: Any, stages: Any) -> Any:
    return exp(log(carried_in / rinse_limit) / stages)


RINSE_WATER = Formula(
    name="rinse_water",
    title="Water for counter-current rinses",
    decides="how much water runs for each volume carried in",
    inputs=(CARRIED_IN, RINSE_LIMIT, STAGES),
    answer=Answer(
        "r", "rinse water for each volume carried in, next whole number", "", decimals=0, toward="up"
    ),
    source=_SERIES,
    function=_whole_ratio,
    cautions=("Two small rinses beat one large one.",),
    examples=(
        Example({"carried_in": "270 g/L", "rinse_limit": "40 mg/L", "stages": 1}, "6749"),
        Example({"carried_in": "270 g/L", "rinse_limit": "40 mg/L", "stages": 2}, "82"),
        Example({"carried_in": "270 g/L", "rinse_limit": "40 mg/L", "stages": 3}, "19"),
    ),
    naive=Naive(_root, "the smaller terms of the series (the usual approximation)"),
)

TOLERATED = Input(
    "tolerated",
    "c_limit",
    "concentration of the stranger that the bath bears",
    "mg/L",
    ("g/L",),
    "1 to 1000 mg/L",
    "0.001 to 100000 mg/L",
    "a bath that bears more is none of ours",
)
STRANGER = Input(
    "stranger",
    "c_stranger",
    "concentration of the stranger in what is carried in",
    "mg/L",
    ("g/L",),
    "1 to 100000 mg/L",
    "0.001 to 2000000 mg/L",
    "nothing is carried in that holds more",
)
CARRIED_VOLUME = Input(
    "carried_volume",
    "V_carried",
    "liquid that one board carries in",
    "mL",
    ("uL", "L"),
    "0.5 to 20 mL",
    "0.001 to 1000 mL",
    "more drips off by itself",
)


def _boards(tolerated: Any, bath_volume: Any, carried_volume: Any, stranger: Any) -> Any:
    return tolerated * bath_volume / (carried_volume * stranger)


CONTAMINATION_BUDGET = Formula(
    name="contamination_budget",
    title="Boards until a bath is spoilt",
    decides="why the rinsing rules are strict",
    inputs=(TOLERATED, BATH_VOLUME, CARRIED_VOLUME, STRANGER),
    answer=Answer("N", "boards", "boards", decimals=0, toward="down"),
    source="mass balance; nothing leaves the bath again",
    function=_boards,
    cautions=("One unrinsed board carries in what hundreds of rinsed ones do.",),
    examples=(
        Example(
            {"tolerated": "5 mg/L", "bath_volume": "9 L", "carried_volume": "4 mL", "stranger": "50 mg/L"},
            "225 boards",
        ),
    ),
)
