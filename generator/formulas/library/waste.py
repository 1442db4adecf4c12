"""How far waste containers and the spill kit reach."""

from typing import Any

from generator.formulas.constants import HYDROGEN_CARBONATE_MOLAR_MASS, SULFURIC_ACID_MOLAR_MASS
from generator.formulas.formula import Answer, Example, Formula, Naive
from generator.formulas.inputs import Input
from generator.formulas.words import whole_down

_OFFICE = "The safety office decides what is done with a spill and with waste. Ask it."

CONTAINER = Input(
    "container",
    "V_container",
    "size of the container",
    "L",
    ("mL", "gal"),
    "1 to 60 L",
    "0.01 to 10000 L",
    "a container holds something",
    "20 L",
)
FULL_AT = Input(
    "full_at",
    "f",
    "part of the container that may be filled",
    "%",
    (),
    "50 to 90 %",
    "1 to 95 %",
    "a container is never filled to the brim",
    "75 %",
)
A_BOARD = Input(
    "a_board",
    "V_board",
    "waste that one board makes",
    "L",
    ("mL", "gal"),
    "0.1 to 3 L",
    "0.001 to 1000 L",
    "a board that is rinsed makes waste",
)


def _runs(container: Any, full_at: Any, a_board: Any) -> Any:
    return whole_down(container * full_at / a_board)


def _to_the_brim(container: Any, a_board: Any) -> Any:
    return whole_down(container / a_board)


CONTAINER_RUNS = Formula(
    name="container_runs",
    title="Boards until a container is full",
    decides="when to ask for a pickup",
    inputs=(CONTAINER, FULL_AT, A_BOARD),
    answer=Answer("N", "boards", "boards", decimals=0, toward="down"),
    source="definition",
    function=_runs,
    cautions=(
        "A container for oxidisers is vented and stays well below full.",
        _OFFICE,
    ),
    examples=(Example({"container": "20 L", "full_at": "75 %", "a_board": "0.7 L"}, "21 boards"),),
    naive=Naive(_to_the_brim, "that a container is never filled to the brim"),
)

SPILL_VOLUME = Input(
    "spill_volume",
    "V_spill",
    "largest spill that the kit is for",
    "L",
    ("mL", "gal"),
    "0.05 to 5 L",
    "0.001 to 50 L",
    "a larger spill is left to the emergency services",
)
SPILL_ACID = Input(
    "spill_acid",
    "c_acid",
    "sulfuric acid in what is spilt",
    "g/L",
    ("kg/L", "oz/gal"),
    "10 to 300 g/L",
    "0.1 to 1840 g/L",
    "no sulfuric acid is stronger",
)
EXCESS = Input(
    "excess",
    "k_excess",
    "how much more is kept than the sum asks for",
    "",
    (),
    "1.2 to 3",
    "1 to 10",
    "less than the sum does not reach",
    "1.5",
)


def _kit(spill_volume: Any, spill_acid: Any, excess: Any) -> Any:
    acid = spill_volume * spill_acid
    return 2 * acid * HYDROGEN_CARBONATE_MOLAR_MASS * excess / SULFURIC_ACID_MOLAR_MASS


def _one_for_one(spill_volume: Any, spill_acid: Any, excess: Any) -> Any:
    return spill_volume * spill_acid * HYDROGEN_CARBONATE_MOLAR_MASS * excess / SULFURIC_ACID_MOLAR_MASS


NEUTRALISING_ESTIMATE = Formula(
    name="neutralising_estimate",
    title="Sodium hydrogen carbonate in the spill kit",
    decides="how much to keep in stock, and nothing else",
    inputs=(SPILL_VOLUME, SPILL_ACID, EXCESS),
    answer=Answer("m", "sodium hydrogen carbonate to keep", "kg", ("g", "lb"), decimals=2, toward="up"),
    source="two NaHCO3 for one H2SO4; the excess is common practice, no source",
    function=_kit,
    cautions=(
        "For the stock of the spill kit only. This is no recipe for disposal.",
        "It froths and gives off gas: never in a closed vessel.",
        _OFFICE,
    ),
    who="staff",
    examples=(Example({"spill_volume": "1 L", "spill_acid": "190 g/L"}, "0.49 kg"),),
    naive=Naive(_one_for_one, "that one sulfuric acid takes two"),
)
