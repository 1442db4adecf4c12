"""Holes: which drill, how deep, how small, how much ring is left."""

from typing import Any

from generator.formulas.formula import Answer, Example, Formula, Naive
from generator.formulas.inputs import Input, Sizes
from generator.formulas.library.workpiece import BOARD_THICKNESS, COPPER, DRILL, THROWING_POWER
from generator.formulas.words import next_size_up

FINISHED = Input(
    "finished",
    "d_finished",
    "diameter wanted after plating",
    "mm",
    ("in", "mil"),
    "0.3 to 3 mm",
    "0.01 to 10 mm",
    "a wider opening is milled",
)
PLAY = Input(
    "play",
    "s",
    "room that the pin or wire needs beside it",
    "mm",
    ("in", "mil"),
    "0 to 0.2 mm",
    "0 to 5 mm",
    "less than nothing is a press fit",
    "0 mm",
)
DRILLS = Sizes(
    "drills",
    "drills",
    "drills in the rack",
    "mm",
    tuple(f"{size / 100:.2f} mm" for size in range(30, 325, 5)),
)


def _drill(finished: Any, copper: Any, throwing_power: Any, play: Any, drills: Any) -> Any:
    return next_size_up(finished + 2 * copper * throwing_power + play, drills)


def _one_wall(finished: Any, copper: Any, throwing_power: Any, play: Any, drills: Any) -> Any:
    return next_size_up(finished + copper * throwing_power + play, drills)


DRILL_SIZE = Formula(
    name="drill_size",
    title="Drill for a plated hole",
    decides="which tool to load, before drilling",
    inputs=(FINISHED, COPPER, THROWING_POWER, PLAY, DRILLS),
    answer=Answer("d", "drill to take", "mm", ("in",), decimals=2),
    source="geometry: copper grows on both sides of the hole",
    function=_drill,
    cautions=("Give your own rack of drills: the next size up is taken from it.",),
    examples=(
        Example(
            {"finished": "0.80 mm", "copper": "22 um", "throwing_power": "80 %", "play": "0.05 mm"}, "0.90 mm"
        ),
        # 0.8 + 2 x 0.05 is a little more than 0.9 in doubles, and 0.90 is the drill all the same.
        Example({"finished": "0.80 mm", "copper": "50 um", "throwing_power": "100 %"}, "0.90 mm"),
    ),
    naive=Naive(_one_wall, "that copper grows on both sides of the hole"),
)


def _aspect(board_thickness: Any, drill: Any) -> Any:
    return board_thickness / drill


ASPECT_RATIO = Formula(
    name="aspect_ratio",
    title="Aspect ratio of a hole",
    decides="whether liquid and current reach the middle",
    inputs=(BOARD_THICKNESS, DRILL),
    answer=Answer("AR", "depth over diameter", "", decimals=2),
    source="definition",
    function=_aspect,
    cautions=("The smallest hole of the board decides.",),
    examples=(Example({"board_thickness": "1.55 mm", "drill": "0.45 mm"}, "3.44"),),
)

ASPECT_LIMIT = Input(
    "aspect_limit",
    "AR_most",
    "largest aspect ratio that this line plates",
    "",
    (),
    "3 to 8",
    "0.1 to 30",
    "no line plates deeper holes",
    "4",
)


def _smallest(board_thickness: Any, aspect_limit: Any) -> Any:
    return board_thickness / aspect_limit


SMALLEST_HOLE = Formula(
    name="smallest_hole",
    title="Smallest hole that can be plated",
    decides="whether a design is accepted",
    inputs=(BOARD_THICKNESS, ASPECT_LIMIT),
    answer=Answer("d_least", "smallest drilled diameter", "mm", ("in", "mil"), decimals=2, toward="up"),
    source="definition of the aspect ratio",
    function=_smallest,
    cautions=("The limit belongs to the line: it was found on test boards.",),
    examples=(Example({"board_thickness": "1.55 mm", "aspect_limit": "4"}, "0.39 mm"),),
)

PAD = Input(
    "pad",
    "D_pad",
    "diameter of the pad",
    "mm",
    ("in", "mil"),
    "0.6 to 4 mm",
    "0.05 to 50 mm",
    "a pad has a diameter",
)
MISREGISTRATION = Input(
    "misregistration",
    "e",
    "how far hole and pad are off each other",
    "mm",
    ("um", "mil"),
    "0 to 0.15 mm",
    "0 to 5 mm",
    "a distance is not below nothing",
)


def _ring(pad: Any, drill: Any, misregistration: Any) -> Any:
    return (pad - drill) / 2 - misregistration


def _without_offset(pad: Any, drill: Any) -> Any:
    return (pad - drill) / 2


ANNULAR_RING = Formula(
    name="annular_ring",
    title="Ring that is left round a hole",
    decides="whether a hole still sits in its pad",
    inputs=(PAD, DRILL, MISREGISTRATION),
    answer=Answer("b", "narrowest ring", "mm", ("um", "mil"), decimals=2, toward="down"),
    source="geometry of two circles",
    function=_ring,
    cautions=("Below nothing means that the hole breaks out of the pad.",),
    examples=(Example({"pad": "1.6 mm", "drill": "0.9 mm", "misregistration": "0.08 mm"}, "0.27 mm"),),
    naive=Naive(_without_offset, "that hole and pad are never quite on each other"),
)
