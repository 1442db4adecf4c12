"""Copper foil and the current that a track carries."""

from typing import Any

from generator.formulas.constants import METAL
from generator.formulas.formula import Answer, Example, Formula
from generator.formulas.inputs import Choice, Input, Table, TableField, TableRow
from generator.formulas.library.electricity import CURRENT
from generator.formulas.symbols import constant
from generator.formulas.words import exp, log
from generator.units import UNITS
from generator.units.quantity import to_si

_IPC = "IPC-2221 as quoted by public calculators: A = (I / (k ΔT^0.44))^(1/0.725)"

FOIL = Input(
    "foil",
    "m_foil",
    "mass of copper foil for each area, as it is sold",
    "oz/ft2",
    ("g/m2",),
    "0.5 to 3 oz/ft2",
    "0.01 to 50 oz/ft2",
    "no foil is sold thinner or thicker",
)


def _thickness(foil: Any, metal: Any) -> Any:
    return foil / metal.density


FOIL_THICKNESS = Formula(
    name="foil_thickness",
    title="Thickness of copper foil",
    decides="what one ounce means in micrometres",
    inputs=(FOIL, METAL),
    answer=Answer("δ_foil", "thickness of the foil", "um", ("mil",), decimals=1),
    source="mass over density",
    function=_thickness,
    cautions=("Foil may be a tenth thinner, and cleaning takes more of it away.",),
    examples=(Example({"foil": "1 oz/ft2"}, "34.1 um"),),
)

TRACKS = Table(
    "tracks",
    (TableField("k", "k", "constant of the rule", ""),),
    (
        TableRow("outside", "Track on an outer face", (0.048,), _IPC),
        TableRow("inside", "Track inside the board", (0.024,), _IPC),
    ),
)
TRACK = Choice("track", "track", "where the track runs", TRACKS, "outside")
RISE = Input(
    "rise",
    "ΔT",
    "how much warmer the track may get",
    "delta degC",
    ("delta degF", "K"),
    "5 to 40 delta degC",
    "0.1 to 100 delta degC",
    "the rule ends there",
    "10 delta degC",
)
FOIL_HEIGHT = Input(
    "foil_height",
    "h_foil",
    "thickness of the copper of a track",
    "um",
    ("mil", "mm"),
    "17 to 105 um",
    "1 to 1000 um",
    "the rule ends there",
    "35 um",
)


def _unit(symbol: str, of: str) -> Any:
    return constant(f"one {of}", symbol, to_si(1, of), of, "unit", UNITS[of].dimension)


AMPERE, KELVIN, MIL = _unit("A", "A"), _unit("K", "K"), _unit("mil", "mil")


def _width(current: Any, rise: Any, track: Any, foil_height: Any) -> Any:
    section = exp((log(current / AMPERE) - log(track.k) - 0.44 * log(rise / KELVIN)) / 0.725)
    return section * MIL**2 / foil_height


TRACK_WIDTH = Formula(
    name="track_width",
    title="Width of a track for its current",
    decides="whether a design is accepted",
    inputs=(CURRENT, RISE, TRACK, FOIL_HEIGHT),
    answer=Answer("b_track", "width of the track at least", "mm", ("mil", "in"), decimals=2, toward="up"),
    source=_IPC,
    function=_width,
    cautions=("An old rule for a lone track in still air. Take more where tracks lie side by side.",),
    examples=(Example({"current": "2 A", "foil_height": "1.378 mil"}, "0.78 mm"),),
)
