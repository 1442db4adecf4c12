"""What is around the steps of a card: head, foot and panels, the panels across the top or in a rail."""

from typing import NamedTuple

from generator.outputs.press.blocks import Block
from generator.outputs.press.columns import stack_length, total
from generator.outputs.press.foot import foot, set_foot
from generator.outputs.press.head import head, set_head
from generator.outputs.press.letters import Letters
from generator.outputs.press.panels import panels
from generator.outputs.press.paper import Paper
from generator.outputs.press.withdrawn import notice
from generator.views.card import CardView

# A rail of panels: least width in cap heights, greatest in parts of the sheet.
_NARROW_RAIL = 13
_WIDE_RAIL = 0.5


class Around(NamedTuple):
    """What is around the steps of a card on one sheet, with letters of one size.

    `rail` is the width in mm of a column of panels at the left, 0 when the panels stand across the top.

    `along` is the length of the panels in the rail, which are set only when the card is drawn, and whether
    their words stay whole. `height` in mm is what head, panels and foot leave of a column.
    """

    paper: Paper
    letters: Letters
    head: Block
    foot: Block
    top: tuple[Block, ...]
    rail: float
    along: tuple[float, bool]
    height: float


class Surroundings:
    """What is around one card, each part measured once while the card is being fitted.

    `made` holds what came of a sheet, a rail or none, and letters; `ends` heads and feet. A rail so many cap
    heights wide has one length in cap heights, whatever the letters: `rails` holds it, with whether its
    words stay whole.
    """

    def __init__(self, card: CardView) -> None:
        self.card = card
        self._head, self._foot = set_head(card), set_foot(card)
        self._made: dict[tuple[Paper, bool, float], Around] = {}
        self._ends: dict[tuple[float, float], tuple[Block, Block]] = {}
        self._rails: dict[int, tuple[float, bool]] = {}

    def around(self, sheet: Paper, rail: bool, cap: float) -> Around:
        """Head, foot and panels on that sheet with capitals of `cap` mm."""
        key = (sheet, rail, cap)
        if key not in self._made:
            railed = rail and self.card.status != "withdrawn"
            self._made[key] = (self._railed if railed else self._topped)(sheet, Letters(cap))
        return self._made[key]

    def _topped(self, sheet: Paper, letters: Letters) -> Around:
        first, last, between = self._between(sheet, letters)
        top = self._top(sheet.inner_width, letters)
        return Around(sheet, letters, first, last, top, 0.0, (0.0, True), between - total(top))

    def _top(self, room: float, letters: Letters) -> tuple[Block, ...]:
        """The panels, or the notice of a card that is withdrawn."""
        if self.card.status == "withdrawn":
            return (notice(self.card, room, letters)._replace(gap=2 * letters.space),)
        return panels(self.card, room, letters, rail=False)

    def _railed(self, sheet: Paper, letters: Letters) -> Around:
        first, last, between = self._between(sheet, letters)
        text = letters.text
        width = self._narrowest(int(sheet.inner_width / text * _WIDE_RAIL), between / text)
        length, kept = self._rail(width)
        return Around(sheet, letters, first, last, (), width * text, (length * text, kept), between)

    def _between(self, sheet: Paper, letters: Letters) -> tuple[Block, Block, float]:
        """Head and foot, and the height in mm that they leave."""
        room, text = sheet.inner_width, letters.text
        if (room, text) not in self._ends:
            self._ends[room, text] = head(self._head, room, letters), foot(self._foot, room, letters)
        first, last = self._ends[room, text]
        return first, last, sheet.inner_height - (first.height + last.height + 2 * letters.space)

    def _narrowest(self, widest: int, height: float) -> int:
        """The narrowest rail in which the panels fit; the widest where none does. All in cap heights."""
        low, high = _NARROW_RAIL, max(_NARROW_RAIL, widest)
        # What is known from other letters narrows the search: a wider rail is never longer.
        for known, (length, kept) in self._rails.items():
            fits = kept and length <= height
            low, high = (low, min(high, known)) if fits else (max(low, min(known + 1, high)), high)
        while low < high:
            middle = (low + high) // 2
            length, kept = self._rail(middle)
            low, high = (low, middle) if kept and length <= height else (middle + 1, high)
        return high

    def _rail(self, width: int) -> tuple[float, bool]:
        if width not in self._rails:
            built = panels(self.card, float(width), Letters(1.0), rail=True)
            self._rails[width] = stack_length(built), not any(block.split for block in built)
        return self._rails[width]
