"""Area, current and time of a plating job."""

from typing import Any

from generator.formulas.constants import FARADAY, METAL
from generator.formulas.formula import Answer, Example, Formula, Naive, Requirement
from generator.formulas.library.electricity import CONTACT_AREA, DENSITY, EFFICIENCY
from generator.formulas.library.workpiece import AREA, BOARD_THICKNESS, COPPER, HOLES, LENGTH, MASKED, WIDTH
from generator.formulas.words import pi, total

_FARADAY_LAW = "Faraday's law of electrolysis, as in OpenStax Chemistry 2e, section 17.7"
_CLASS_BOARD = {
    "length": "140 mm",
    "width": "95 mm",
    "board_thickness": "1.55 mm",
    "masked": "8 mm",
    "holes": ({"count": 180, "drill": "0.9 mm"}, {"count": 26, "drill": "1.3 mm"}),
}


def _area(length: Any, width: Any, board_thickness: Any, masked: Any, holes: Any) -> Any:
    faces = 2 * (length - masked) * width
    openings = 2 * total(holes, lambda row: row.count * pi * row.drill**2 / 4)
    walls = total(holes, lambda row: row.count * pi * row.drill * board_thickness)
    return faces - openings + walls


def _one_face(length: Any, width: Any, masked: Any) -> Any:
    return (length - masked) * width


def _masked_is_part(length: Any, masked: Any) -> Any:
    return masked < length


PLATING_AREA = Formula(
    name="plating_area",
    title="Area to be plated",
    decides="the current: area times current density",
    inputs=(LENGTH, WIDTH, BOARD_THICKNESS, MASKED, HOLES),
    answer=Answer("A", "area that is plated", "dm2", ("cm2", "ft2"), decimals=2),
    source="geometry of a drilled plate; the edges are left out because they are masked or trimmed",
    function=_area,
    cautions=(
        "Take the drilled diameter, not the finished one.",
        "Both faces are counted. A sum from one face gives half the current and half the copper.",
    ),
    examples=(Example(_CLASS_BOARD, "2.57 dm2"),),
    requires=(Requirement(_masked_is_part, "the masked strip is as long as the board"),),
    naive=Naive(_one_face, "the second face and the hole walls"),
)


def _current(density: Any, area: Any, contact_area: Any) -> Any:
    return density * (area + contact_area)


def _board_alone(density: Any, area: Any) -> Any:
    return density * area


PLATING_CURRENT = Formula(
    name="plating_current",
    title="Current for the area",
    decides="the setting of the rectifier",
    inputs=(DENSITY, AREA, CONTACT_AREA),
    answer=Answer(
        "I", "current", "A", ("mA",), decimals=1, never_above="the most that the rectifier and the rack carry"
    ),
    source="definition of current density",
    function=_current,
    cautions=(
        "The answer is in amperes. A meter that reads milliamperes shows a thousand times the number.",
        "Never set more than the supply or the rack is made for.",
    ),
    examples=(Example({"density": "1.9 A/dm2", "area": "2.57 dm2", "contact_area": "0.06 dm2"}, "5.0 A"),),
    naive=Naive(_board_alone, "the bare rack metal and the coupon, which take current too"),
)


def _time(copper: Any, density: Any, efficiency: Any, metal: Any) -> Any:
    return copper * metal.density * metal.charges * FARADAY / (metal.molar_mass * density * efficiency)


def _all_current_plates(copper: Any, density: Any, metal: Any) -> Any:
    return copper * metal.density * metal.charges * FARADAY / (metal.molar_mass * density)


PLATING_TIME = Formula(
    name="plating_time",
    title="Time for plating",
    decides="the setting of the timer",
    inputs=(COPPER, DENSITY, EFFICIENCY, METAL),
    answer=Answer("t", "time with current on", "min", ("s", "h"), decimals=1),
    source=_FARADAY_LAW,
    function=_time,
    cautions=("This is the average on the face. The middle of a hole gets less.",),
    examples=(
        Example({"copper": "22 um", "density": "1.9 A/dm2", "efficiency": "97 %"}, "54.1 min"),
        Example({"copper": "0.220516 um", "density": "1 A/dm2", "efficiency": "100 %"}, "1.00 min"),
    ),
    naive=Naive(_all_current_plates, "that a part of the current makes no metal"),
)
