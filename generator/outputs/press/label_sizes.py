"""Sizes that a label must have by the volume of its container, and how labels lie on a sheet of paper."""

from dataclasses import dataclass

from generator.outputs.press.metrics import medium

# Side of the red diamond -> side of the drawing round it: the package's drawings leave 2.1 % of white.
DRAWING_PER_SIDE = 2**0.5 / 0.9785
# x-height of the bundled letters in parts of their cap height (OS/2 table of the font: 516 and 698 of 1000).
X_PER_CAP = 516 / 698
# Line to line at least 120 % of the size of the type (Regulation (EU) 2024/2865, as consultants quote it).
LINE = 1.2


@dataclass(frozen=True, slots=True)
class VolumeClass:
    """Containers up to `most` litres (None: any): least label, pictogram side and x-height, all in mm."""

    name: str
    most: float | None
    label: tuple[float, float]
    pictogram: float
    x_height: float

    @property
    def cap(self) -> float:
        """Height of capitals whose small letters are `x_height` high, with a hair over for rounding."""
        return self.x_height * 1.005 / X_PER_CAP

    @property
    def pitch(self) -> float:
        """Line to line."""
        return self.cap / medium().cap * LINE


# CLP Annex I table 1.3 (read) for labels and pictograms; x-heights of Reg. (EU) 2024/2865 (as several
# consultants quote it), which applies from 2028. Up to 3 L the table asks for 10 mm, "if possible" 16 mm.
# 1.2.1.3 also asks for a fifteenth of the least label: that is 16.02 mm where the table says 16, and
# 32.19 mm where it says 32; the larger of the two is used.
CLASSES = (
    VolumeClass("up to 0.5 L", 0.5, (74.0, 52.0), 16.1, 1.2),
    VolumeClass("over 0.5 L, up to 3 L", 3.0, (74.0, 52.0), 16.1, 1.4),
    VolumeClass("over 3 L, up to 50 L", 50.0, (105.0, 74.0), 23.0, 1.8),
    VolumeClass("over 50 L, up to 500 L", 500.0, (148.0, 105.0), 32.2, 2.0),
    VolumeClass("over 500 L", None, (210.0, 148.0), 46.0, 2.0),
)
# Halves of halves of A4, which common label paper comes in, and a whole sheet of Letter.
LABELS = ((74.0, 52.0), (105.0, 74.0), (148.0, 105.0), (210.0, 148.0), (297.0, 210.0), (279.4, 215.9))
# What a desk printer leaves white (common practice, no source).
PRINTER_EDGE = 5.0
# White inside a label that is cut out, and inside one that is the whole sheet, in mm (ours, no source).
_CUT_EDGE, _SHEET_EDGE = 4.0, PRINTER_EDGE + 3.0
_SHEETS = LABELS[-2:]
_PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}


@dataclass(frozen=True, slots=True)
class Tiling:
    """A sheet of paper with labels edge to edge: its size, columns, rows, and the margins round them."""

    width: float
    height: float
    columns: int
    rows: int
    left: float
    top: float


def inner_edge(label: tuple[float, float]) -> float:
    """White inside a label; a whole sheet keeps clear of what a printer cannot reach."""
    return _SHEET_EDGE if label in _SHEETS else _CUT_EDGE


def volume_class(litres: float) -> VolumeClass:
    """The class of a container of that volume."""
    return next(one for one in CLASSES if one.most is None or litres <= one.most)


def tiling(label: tuple[float, float], paper: str = "A4") -> Tiling | None:
    """As many labels as go on the paper, whichever way it is turned; None where not even one does."""
    short, long = _PAPERS[paper]
    ways = [_way(label, size) for size in ((short, long), (long, short))]
    best = max(ways, key=lambda way: way.columns * way.rows)
    return best if best.columns * best.rows else None


def _way(label: tuple[float, float], size: tuple[float, float]) -> Tiling:
    columns, rows = (int((room + 0.01) / need) for room, need in zip(size, label, strict=True))
    left, top = ((size[n] - count * label[n]) / 2 for n, count in enumerate((columns, rows)))
    return Tiling(*size, columns, rows, max(left, 0.0), max(top, 0.0))
