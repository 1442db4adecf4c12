"""How large letters must be to be read from where people stand."""

from typing import Any

from generator.formulas.formula import Answer, Example, Formula
from generator.formulas.inputs import Input

_Z535 = "ANSI Z535.2, clause 9.2.3, as quoted in a public sign catalogue"

DISTANCE = Input(
    "distance",
    "D",
    "distance from which it is read",
    "m",
    ("cm", "ft"),
    "0.4 to 3 m",
    "0.1 to 200 m",
    "nobody reads from nearer or farther",
)


def _text(distance: Any) -> Any:
    return distance / 300


def _signal_word(distance: Any) -> Any:
    return distance / 150


LETTER_HEIGHT = Formula(
    name="letter_height",
    title="Height of letters",
    decides="whether a card can be read from where people stand",
    inputs=(DISTANCE,),
    answer=Answer("h", "height of capital letters at least", "mm", ("in",), decimals=1, toward="up"),
    source=_Z535,
    function=_text,
    cautions=(
        "For good light and good eyes. Where light is poor, take half as much again.",
        "The published table asks for 6.1 mm at five feet, where its own rule gives 5.1 mm.",
    ),
    examples=(Example({"distance": "1.5 m"}, "5.0 mm"),),
)
SIGNAL_HEIGHT = Formula(
    name="signal_height",
    title="Height of a signal word",
    decides="the size of DANGER or WARNING on a card",
    inputs=(DISTANCE,),
    answer=Answer("h_signal", "height of the signal word at least", "mm", ("in",), decimals=1, toward="up"),
    source=_Z535,
    function=_signal_word,
    cautions=("For good light and good eyes. Where light is poor, take half as much again.",),
    examples=(Example({"distance": "1.5 m"}, "10.0 mm"),),
)
