"""Whether a board that comes back to the drill sits where it sat."""

from typing import Any

from generator.formulas.formula import Answer, Example, Formula
from generator.formulas.inputs import Input
from generator.formulas.words import sqrt

_OFFSET = ("um", "mil")
_TWO_MARKS = "geometry of two marks, for small angles"
_FAR = "a mark that is so far off is another mark"


def _offset(name: str, symbol: str, means: str) -> Input:
    return Input(name, symbol, means, "mm", _OFFSET, "-0.1 to 0.1 mm", "-5 to 5 mm", _FAR)


MARK_1_ALONG = _offset("mark_1_along", "x_1", "how far the first mark is off along the line of marks")
MARK_1_ACROSS = _offset("mark_1_across", "y_1", "how far the first mark is off across the line of marks")
MARK_2_ALONG = _offset("mark_2_along", "x_2", "how far the second mark is off along the line of marks")
MARK_2_ACROSS = _offset("mark_2_across", "y_2", "how far the second mark is off across the line of marks")
MARK_DISTANCE = Input(
    "mark_distance",
    "D_marks",
    "distance between the marks in the drawing",
    "mm",
    ("in",),
    "50 to 300 mm",
    "1 to 2000 mm",
    "marks stand apart",
)
REACH = Input(
    "reach",
    "a",
    "distance from the first mark to the farthest hole",
    "mm",
    ("in",),
    "20 to 300 mm",
    "0 to 2000 mm",
    "a distance is not below nothing",
)


def _stretch(mark_1_along: Any, mark_2_along: Any, mark_distance: Any) -> Any:
    return (mark_2_along - mark_1_along) / mark_distance


BOARD_STRETCH = Formula(
    name="board_stretch",
    title="Stretch between two marks",
    decides="whether the board has grown or shrunk",
    inputs=(MARK_1_ALONG, MARK_2_ALONG, MARK_DISTANCE),
    answer=Answer("ε", "stretch", "mm/m", ("%",), decimals=2),
    source=_TWO_MARKS,
    function=_stretch,
    cautions=("Let the board come to room temperature first.",),
    examples=(
        Example(
            {"mark_1_along": "0.02 mm", "mark_2_along": "0.05 mm", "mark_distance": "120 mm"}, "0.25 mm/m"
        ),
    ),
)


def _turn(mark_1_across: Any, mark_2_across: Any, mark_distance: Any) -> Any:
    return (mark_2_across - mark_1_across) / mark_distance


BOARD_ROTATION = Formula(
    name="board_rotation",
    title="Turn between two marks",
    decides="whether the board sits askew on its pins",
    inputs=(MARK_1_ACROSS, MARK_2_ACROSS, MARK_DISTANCE),
    answer=Answer("φ", "turn", "mm/m", ("%",), decimals=2),
    source=_TWO_MARKS,
    function=_turn,
    cautions=("A crumb under the board or beside a pin turns it.",),
    examples=(
        Example(
            {"mark_1_across": "0.03 mm", "mark_2_across": "-0.01 mm", "mark_distance": "120 mm"}, "-0.33 mm/m"
        ),
    ),
)


def _error(
    mark_1_along: Any,
    mark_1_across: Any,
    mark_2_along: Any,
    mark_2_across: Any,
    mark_distance: Any,
    reach: Any,
) -> Any:
    along = mark_1_along + (mark_2_along - mark_1_along) / mark_distance * reach
    across = mark_1_across + (mark_2_across - mark_1_across) / mark_distance * reach
    return sqrt(along**2 + across**2)


REGISTRATION_ERROR = Formula(
    name="registration_error",
    title="How far off the farthest hole will be",
    decides="whether drilling may resume",
    inputs=(MARK_1_ALONG, MARK_1_ACROSS, MARK_2_ALONG, MARK_2_ACROSS, MARK_DISTANCE, REACH),
    answer=Answer("e", "error at the farthest hole", "mm", ("um", "mil"), decimals=3, toward="up"),
    source=_TWO_MARKS,
    function=_error,
    cautions=("Both marks being good is not enough where holes lie outside them.",),
    examples=(
        Example(
            {
                "mark_1_along": "0.02 mm",
                "mark_1_across": "0.03 mm",
                "mark_2_along": "0.05 mm",
                "mark_2_across": "-0.01 mm",
                "mark_distance": "120 mm",
                "reach": "140 mm",
            },
            "0.057 mm",
        ),
    ),
)
