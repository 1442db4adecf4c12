"""Inputs that describe the part, its holes and the metal on it: one name, one symbol, one meaning."""

from generator.formulas.inputs import Input, Rows

_HAND = "a board is held in two hands"
_THIN = "a thinner or thicker board is no work for this line"

LENGTH = Input(
    "length", "L", "length of the board", "mm", ("cm", "dm", "in"), "20 to 300 mm", "1 to 2000 mm", _HAND
)
WIDTH = Input(
    "width", "W", "width of the board", "mm", ("cm", "dm", "in"), "20 to 300 mm", "1 to 2000 mm", _HAND
)
BOARD_THICKNESS = Input(
    "board_thickness",
    "T",
    "thickness of the board",
    "mm",
    ("in", "mil"),
    "0.8 to 2.4 mm",
    "0.05 to 20 mm",
    _THIN,
)
MASKED = Input(
    "masked",
    "L_masked",
    "strip at one end that the rack hides",
    "mm",
    ("cm", "in"),
    "0 to 15 mm",
    "0 to 2000 mm",
    "a strip has a width",
    "0 mm",
)
COUNT = Input(
    "count", "n", "how many of these", "", (), "1 to 1000", "0 to 100000", "holes are counted", whole=True
)
DRILL = Input(
    "drill",
    "d",
    "drilled diameter of a hole",
    "mm",
    ("in", "mil"),
    "0.3 to 3.2 mm",
    "0.05 to 10 mm",
    "a wider opening is milled and counted as edge",
)
HOLES = Rows("holes", "holes", "holes of the board, one row for each drill", (COUNT, DRILL))
AREA = Input(
    "area",
    "A",
    "area that is plated, both faces and the hole walls",
    "dm2",
    ("cm2", "m2", "ft2"),
    "0.2 to 10 dm2",
    "0.001 to 1000 dm2",
    "nothing plates on no area",
)
COPPER = Input(
    "copper",
    "δ",
    "metal thickness wanted on the face",
    "um",
    ("mm", "mil"),
    "15 to 35 um",
    "0.01 to 1000 um",
    "a thicker layer is built, not plated",
)
THROWING_POWER = Input(
    "throwing_power",
    "k",
    "metal in the middle of a hole compared with metal on the face",
    "%",
    (),
    "60 to 100 %",
    "1 to 120 %",
    "the middle of a hole gets about what the face gets, or less",
    "80 %",
)
