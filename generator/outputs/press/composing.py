"""Puts one card together on one sheet: head, columns of panels and steps, foot."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from math import atan2, degrees

from generator.outputs.press.blocks import Block, marks_of
from generator.outputs.press.columns import Flow, flow, level, total
from generator.outputs.press.drawing import Across, Box, Mark, Sheet
from generator.outputs.press.ends import foot, head
from generator.outputs.press.letters import Letters
from generator.outputs.press.panels import panels
from generator.outputs.press.paper import Paper
from generator.outputs.press.reckoner import reckoner
from generator.outputs.press.steps import Density, SetSteps, set_steps, step_blocks
from generator.outputs.press.withdrawn import notice
from generator.outputs.press.wrapping import width
from generator.views.card import CardView

# White that is left over opens the gaps, up to this many times; the rest stays at the bottom.
_OPEN = 2.2
# A rail of panels: least width in cap heights, greatest in parts of the sheet.
_NARROW_RAIL = 13
_WIDE_RAIL = 0.5
_SEAM = 0.1
# A column so wide that no line ends in it.
_ENDLESS = 1e6


@dataclass(frozen=True, slots=True)
class Plan:
    """One way to set a card: sheet, number of columns, letters, density; and what came of it.

    `rail` is the width in mm of a column of panels at the left, 0 when the panels stand across the top.

    `along` is the length of the panels in the rail, which are set only when the plan is drawn, and whether
    their words stay whole. `needed` and `room` are lengths of column in mm; `whole` is false when a word had
    to be broken.
    """

    paper: Paper
    count: int
    density: Density
    rail: float
    letters: Letters
    head: Block
    foot: Block
    top: tuple[Block, ...]
    blocks: tuple[Block, ...]
    along: tuple[float, bool] = (0.0, True)

    @property
    def height(self) -> float:
        """Height of a column: what head, panels and foot leave."""
        ends = self.head.height + self.foot.height + 2 * self.letters.space
        return self.paper.inner_height - ends - (0.0 if self.rail else total(self.top))

    @property
    def left(self) -> float:
        """How far the columns of steps are moved in by the rail, in mm."""
        return self.rail + self.letters.gutter if self.rail else 0.0

    @property
    def column(self) -> float:
        """Width of a column of steps in mm."""
        room = self.paper.inner_width - self.left
        return (room - (self.count - 1) * self.letters.gutter) / self.count

    @property
    def needed(self) -> float:
        """Length of column that the blocks take."""
        return total(self.blocks)

    @property
    def room(self) -> float:
        """Length of column that the sheet has."""
        return max(0.0, self.height) * self.count

    @property
    def whole(self) -> bool:
        """True when no word had to be broken."""
        parts = (self.head, self.foot, *self.top, *self.blocks)
        return self.along[1] and not any(block.split for block in parts)

    @property
    def fits(self) -> bool:
        """True when every block goes in."""
        height = self.height
        if height <= 0 or self.along[0] > height:
            return False
        if self.needed > (height + self.letters.space) * self.count:
            return False
        return flow(self.blocks, height, self.count) is not None


@dataclass(frozen=True, slots=True)
class Way:
    """A sheet, the number of columns of steps, a rail or none, a density."""

    paper: Paper
    count: int
    rail: bool
    density: Density


@dataclass(frozen=True, slots=True)
class Shared:
    """Kept while one card is being fitted, for its plans to share.

    `around` holds what hangs on neither density nor columns, `ends` heads and feet. A rail so many cap
    heights wide has one length in cap heights, whatever the letters: `rails` holds it, with whether its
    words stay whole. `steps` are those of the card, `shortest` is their length in cap heights in a column
    without end.
    """

    around: dict[tuple[Paper, bool, float], Plan] = field(default_factory=dict)
    ends: dict[tuple[float, float], tuple[Block, Block]] = field(default_factory=dict)
    rails: dict[int, tuple[float, bool]] = field(default_factory=dict)
    steps: dict[Density, SetSteps] = field(default_factory=dict)
    shortest: dict[Density, float] = field(default_factory=dict)


def plan(card: CardView, way: Way, cap: float, shared: Shared) -> Plan:
    """The card set in that way with capitals of `cap` mm; `shared` belongs to this card."""
    made = without_steps(card, way, cap, shared)
    if card.status == "withdrawn" or made.height <= 0:
        return made
    letters = made.letters
    tables = tuple(reckoner(table, made.column, letters) for table in card.tables)
    steps = _steps(card, way.density, shared)
    return replace(made, blocks=(*step_blocks(steps, made.column, letters), *tables))


def _steps(card: CardView, density: Density, shared: Shared) -> SetSteps:
    if density not in shared.steps:
        shared.steps[density] = set_steps(card, density)
    return shared.steps[density]


def shortest(card: CardView, made: Plan, shared: Shared) -> float:
    """Length of the steps in cap heights if no line ever ended, in the density of that plan."""
    if made.density not in shared.shortest:
        blocks = step_blocks(_steps(card, made.density, shared), _ENDLESS, Letters(1.0))
        shared.shortest[made.density] = total(blocks)
    return shared.shortest[made.density]


def without_steps(card: CardView, way: Way, cap: float, shared: Shared) -> Plan:
    """The same before its steps are set: what room they will have."""
    key = (way.paper, way.rail, cap)
    if key not in shared.around:
        shared.around[key] = _around(card, way, Letters(cap), shared)
    return replace(shared.around[key], count=way.count, density=way.density)


def _around(card: CardView, way: Way, letters: Letters, shared: Shared) -> Plan:
    """Head, foot and panels, without the steps."""
    inner = way.paper.inner_width
    if (inner, letters.text) not in shared.ends:
        shared.ends[inner, letters.text] = head(card, inner, letters), foot(card, inner, letters)
    top, bottom = shared.ends[inner, letters.text]
    made = Plan(way.paper, way.count, way.density, 0.0, letters, top, bottom, (), ())
    if card.status == "withdrawn":
        return replace(made, top=(notice(card, inner, letters)._replace(gap=2 * letters.space),))
    if not way.rail:
        return replace(made, top=panels(card, inner, letters, rail=False))
    width = _narrowest_rail(card, made, shared)
    length, kept = _rail_in_caps(card, width, shared)
    return replace(made, rail=width * letters.text, along=(length * letters.text, kept))


def rail_length(blocks: Sequence[Block]) -> float:
    """Length of the panels under one another; the white above the first one is not part of it."""
    return total(blocks) - (blocks[0].gap if blocks else 0.0)


def _narrowest_rail(card: CardView, made: Plan, shared: Shared) -> int:
    """The narrowest rail, in cap heights, in which the panels fit; the widest where none does."""
    text = made.letters.text
    room = replace(made, rail=1.0).height / text
    low, high = _NARROW_RAIL, max(_NARROW_RAIL, int(made.paper.inner_width / text * _WIDE_RAIL))
    # What is known from other letters narrows the search: a wider rail is never longer.
    for known, (length, kept) in shared.rails.items():
        fits = kept and length <= room
        low, high = (low, min(high, known)) if fits else (max(low, min(known + 1, high)), high)
    while low < high:
        middle = (low + high) // 2
        length, kept = _rail_in_caps(card, middle, shared)
        low, high = (low, middle) if kept and length <= room else (middle + 1, high)
    return high


def _rail_in_caps(card: CardView, width: int, shared: Shared) -> tuple[float, bool]:
    if width not in shared.rails:
        built = panels(card, float(width), Letters(1.0), rail=True)
        shared.rails[width] = rail_length(built), not any(block.split for block in built)
    return shared.rails[width]


def draw(card: CardView, made: Plan) -> Sheet:
    """The finished drawing of a plan that fits; ValueError for one that does not."""
    placed = _opened(made)
    if placed is None:
        raise ValueError("the card does not fit this plan")
    margin = made.paper.margin
    marks: list[Mark] = [across(made.paper, card.words.draft)] if card.status == "draft" else []
    marks += marks_of(made.head, margin, margin)
    top = panels(card, made.rail, made.letters, rail=True) if made.rail else made.top
    marks += _body(placed, replace(made, top=top))
    marks += marks_of(made.foot, margin, made.paper.height - margin - made.foot.height)
    title = " · ".join(part for part in (card.title, card.procedure_title) if part)
    return Sheet(title, card.language, made.paper.width, made.paper.height, tuple(marks))


def _opened(made: Plan) -> Flow | None:
    """The columns level with each other, with the white between blocks grown to fill the sheet."""
    low, high = 1.0, _OPEN
    for _ in range(5):
        middle = (low + high) / 2
        fits = flow(made.blocks, made.height, made.count, middle)
        low, high = (middle, high) if fits else (low, middle)
    return level(made.blocks, made.height, made.count, low)


def _body(placed: Flow, made: Plan) -> list[Mark]:
    margin, letters = made.paper.margin, made.letters
    marks: list[Mark] = []
    y = margin + made.head.height
    for block in made.top:
        y += block.gap
        marks += marks_of(block, margin, y)
        y += block.height
    top = (margin + made.head.height if made.rail else y) + letters.space
    for place in placed.placed:
        block = place.block
        x = margin + made.left + place.column * (made.column + letters.gutter)
        if block.tie:
            # The pieces of the line reach a little into one another, or a screen shows seams.
            up = place.gap + _SEAM
            marks.append(Box(x, top + place.y - up, block.tie, block.height + up, fill="black"))
        marks += marks_of(block, x, top + place.y)
    return marks


def across(sheet: Paper, word: str) -> Across:
    """A pale word from corner to corner."""
    diagonal = (sheet.width**2 + sheet.height**2) ** 0.5
    cap = min(0.16 * diagonal, 0.72 * diagonal / width(word, 1.0, heavy=True))
    angle = -degrees(atan2(sheet.height, sheet.width))
    return Across(0.0, 0.0, sheet.width, sheet.height, cap, angle, word)
