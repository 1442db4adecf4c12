"""Sheets of paper and the letters that a reading distance asks for."""

from dataclasses import dataclass

from generator.problems import NewelError

# ISO 216 and ANSI/ASME Y14.1, portrait, in mm.
_SHEETS = {"A4": (210.0, 297.0), "A3": (297.0, 420.0), "Letter": (215.9, 279.4), "Tabloid": (279.4, 431.8)}
SIZES: tuple[str, ...] = tuple(_SHEETS)
# A laminating pouch and a desk printer both take about this much (common practice, no source).
_MARGIN = 8.0
# ANSI Z535.2 clause 9.2.3, as quoted publicly: distance to letter height.
TEXT_RATIO = 300.0
SIGNAL_RATIO = 150.0
# However near the reader stands (common practice, no source).
_LEAST = 2.0
# The distance in mm below which letters get no smaller.
NEAREST = _LEAST * TEXT_RATIO


@dataclass(frozen=True, slots=True)
class Paper:
    """A sheet as it hangs: name, width, height and margin in mm."""

    name: str
    width: float
    height: float
    margin: float

    @property
    def inner_width(self) -> float:
        """Width between the margins."""
        return self.width - 2 * self.margin

    @property
    def inner_height(self) -> float:
        """Height between the margins."""
        return self.height - 2 * self.margin


def paper(size: str, orientation: str) -> Paper:
    """The sheet of that name; NewelError for a size that is not one of SIZES."""
    if size not in _SHEETS:
        raise NewelError(
            "card-size-unknown",
            f"there is no card size {size!r}",
            "the press knows the sheets a desk printer takes",
            f"write one of {', '.join(SIZES)}",
        )
    short, long = _SHEETS[size]
    across, down = (long, short) if orientation == "landscape" else (short, long)
    return Paper(size, across, down, _MARGIN)


def least_letter(distance: float) -> float:
    """Least height of capitals, in mm, for a text read from `distance` mm."""
    return max(distance / TEXT_RATIO, _LEAST)
