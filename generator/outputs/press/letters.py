"""The card's typographic system: every size and distance is a multiple of one cap height."""

from dataclasses import dataclass

# Base line to base line, in cap heights: 1.1 times the type size, for short lines under a tall x-height.
PITCH = 1.57
# How far letters hang under the base line, in cap heights.
DESCENT = 0.34


@dataclass(frozen=True, slots=True)
class Letters:
    """All sizes in mm for capitals `text` mm high; nothing on a card is set smaller than `text`."""

    text: float

    @property
    def pitch(self) -> float:
        """Base line to base line of sentences."""
        return PITCH * self.text

    @property
    def place(self) -> float:
        """Name of a place, head of a panel."""
        return 1.1 * self.text

    @property
    def dwell(self) -> float:
        """The time that matters to the work."""
        return 1.8 * self.text

    @property
    def signal(self) -> float:
        """Signal words and the card's title: distance/150 when the text is distance/300."""
        return 2.0 * self.text

    @property
    def disc(self) -> float:
        """Diameter of a station's disc."""
        return 2.1 * self.text

    @property
    def sign(self) -> float:
        """Diameter of a safety sign: two lines of text and a little more."""
        return 2.9 * self.text

    @property
    def gap(self) -> float:
        """White between things that belong together."""
        return 0.6 * self.text

    @property
    def space(self) -> float:
        """White between things that do not."""
        return 0.95 * self.text

    @property
    def gutter(self) -> float:
        """White between two columns."""
        return 1.7 * self.text

    @property
    def hair(self) -> float:
        """Thinnest line that survives a grey copy."""
        return max(0.05 * self.text, 0.18)

    @property
    def bar(self) -> float:
        """Thickest line: frames, rules, and the line that shows a stay at one place."""
        return 0.3 * self.text
