"""What a finished part is measured for."""

from typing import Any

from generator.formulas.constants import METAL
from generator.formulas.formula import Answer, Example, Formula, Naive, Requirement
from generator.formulas.inputs import Input
from generator.formulas.library.electricity import RESISTIVITY, TEMPERATURE
from generator.formulas.library.workpiece import BOARD_THICKNESS, COPPER, DRILL, THROWING_POWER
from generator.formulas.symbols import constant
from generator.formulas.words import pi, sqrt
from generator.units import UNITS
from generator.units.dimension import Dimension

_IACS = "International Annealed Copper Standard, NBS Handbook 100 (1966)"


def _per_kelvin() -> Dimension:
    return UNITS["1/K"].dimension


COPPER_WARMS = constant(
    "rise of copper's resistance with temperature", "α", 0.00393, "1/K", _IACS, _per_kelvin()
)
ROOM = constant("reference temperature", "θ_20", 293.15, "K", _IACS, UNITS["K"].dimension)

COUPON_GAIN = Input(
    "coupon_gain",
    "Δm",
    "mass after plating less mass before",
    "g",
    ("mg",),
    "0.01 to 5 g",
    "0 to 1000 g",
    "a coupon that lost mass was etched, not plated",
)
COUPON_AREA = Input(
    "coupon_area",
    "A_coupon",
    "plated area of the coupon, both faces",
    "cm2",
    ("dm2", "mm2", "in2"),
    "2 to 50 cm2",
    "0.01 to 10000 cm2",
    "nothing plates on no area",
)


def _barrel(
    board_thickness: Any, drill: Any, copper: Any, throwing_power: Any, resistivity: Any, temperature: Any
) -> Any:
    wall = copper * throwing_power
    warm = resistivity * (1 + COPPER_WARMS * (temperature - ROOM))
    return warm * board_thickness / (pi * (drill - wall) * wall)


def _cold_and_even(board_thickness: Any, drill: Any, copper: Any, resistivity: Any) -> Any:
    return resistivity * board_thickness / (pi * (drill - copper) * copper)


def _hole_stays_open(drill: Any, copper: Any, throwing_power: Any) -> Any:
    return 2 * copper * throwing_power < drill


BARREL_RESISTANCE = Formula(
    name="barrel_resistance",
    title="Resistance of a plated hole",
    decides="whether a measured hole has the copper that it should have",
    inputs=(BOARD_THICKNESS, DRILL, COPPER, THROWING_POWER, RESISTIVITY, TEMPERATURE),
    answer=Answer("R", "resistance from face to face", "mohm", ("uohm", "ohm"), decimals=3),
    source=f"resistance of a ring, R = ρT/A with A = π(d - t)t; copper after the {_IACS}",
    function=_barrel,
    cautions=(
        "Four-wire meter only: two leads read their own resistance.",
        "Plated copper conducts some hundredths worse than the annealed copper of the standard.",
    ),
    examples=(
        Example(
            {"board_thickness": "1.6 mm", "drill": "1.0 mm", "copper": "25 um", "throwing_power": "100 %"},
            "0.3602 mohm",
        ),
    ),
    requires=(Requirement(_hole_stays_open, "so much copper closes the hole"),),
    naive=Naive(_cold_and_even, "that the hole gets less copper than the face"),
)


def _coupon(coupon_gain: Any, coupon_area: Any, metal: Any) -> Any:
    return coupon_gain / (metal.density * coupon_area)


COUPON_THICKNESS = Formula(
    name="coupon_thickness",
    title="Thickness from the coupon",
    decides="whether the bath laid down what the sum promised",
    inputs=(COUPON_GAIN, COUPON_AREA, METAL),
    answer=Answer("δ", "metal thickness on the face", "um", ("mil",), decimals=1),
    source="mass over density and area",
    function=_coupon,
    cautions=("The coupon is dry and at room temperature at both weighings.", "Both faces count."),
    examples=(Example({"coupon_gain": "0.486 g", "coupon_area": "25 cm2"}, "21.7 um"),),
)

RESISTANCE = Input(
    "resistance",
    "R",
    "resistance measured from face to face of a hole",
    "mohm",
    ("uohm", "ohm"),
    "0.1 to 2 mohm",
    "0.0001 to 1000000 mohm",
    "a meter that reads nothing is not connected",
)


def _wall(resistance: Any, board_thickness: Any, drill: Any, resistivity: Any, temperature: Any) -> Any:
    warm = resistivity * (1 + COPPER_WARMS * (temperature - ROOM))
    return (drill - sqrt(drill**2 - 4 * warm * board_thickness / (pi * resistance))) / 2


def _has_a_wall(resistance: Any, board_thickness: Any, drill: Any, resistivity: Any, temperature: Any) -> Any:
    warm = resistivity * (1 + COPPER_WARMS * (temperature - ROOM))
    return 4 * warm * board_thickness / (pi * resistance) <= drill**2


COPPER_FROM_RESISTANCE = Formula(
    name="copper_from_resistance",
    title="Wall of a hole from its resistance",
    decides="pass, or call the technician",
    inputs=(RESISTANCE, BOARD_THICKNESS, DRILL, RESISTIVITY, TEMPERATURE),
    answer=Answer(
        "δ_hole", "metal thickness in the hole, if it is even", "um", ("mil",), decimals=1, toward="down"
    ),
    source=f"resistance of a ring, solved for its wall; copper after the {_IACS}",
    function=_wall,
    cautions=(
        "Four-wire meter only: two leads read their own resistance.",
        "An even wall is assumed. A void makes the copper look thinner all round.",
    ),
    examples=(
        Example({"resistance": "0.3600 mohm", "board_thickness": "1.6 mm", "drill": "1.0 mm"}, "25.0 um"),
    ),
    requires=(Requirement(_has_a_wall, "a solid rod of copper would have more resistance: measure again"),),
)

COUPON_LOSS = Input(
    "coupon_loss",
    "Δm_loss",
    "mass before etching less mass after",
    "g",
    ("mg",),
    "0.001 to 1 g",
    "0 to 1000 g",
    "a coupon that gained mass was plated, not etched",
)
ETCH_TIME = Input(
    "etch_time",
    "t_etch",
    "time in the etch",
    "s",
    ("min",),
    "20 to 300 s",
    "0.1 to 100000 s",
    "nothing is etched in no time",
)


def _etch(coupon_loss: Any, coupon_area: Any, etch_time: Any, metal: Any) -> Any:
    return coupon_loss / (metal.density * coupon_area * etch_time)


ETCH_RATE = Formula(
    name="etch_rate",
    title="Etch rate from a coupon",
    decides="whether the micro-etch is spent",
    inputs=(COUPON_LOSS, COUPON_AREA, ETCH_TIME, METAL),
    answer=Answer("v", "etch rate", "um/min", ("um/h",), decimals=2),
    source="mass over density, area and time",
    function=_etch,
    cautions=("The coupon is dry at both weighings.", "Both faces count."),
    examples=(
        Example({"coupon_loss": "0.0269 g", "coupon_area": "25 cm2", "etch_time": "40 s"}, "1.80 um/min"),
    ),
)
