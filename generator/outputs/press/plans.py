"""One way to set a card, and what came of it: sheet, columns, letters, whether all goes in."""

from dataclasses import dataclass

from generator.outputs.press.around import Around, Surroundings
from generator.outputs.press.blocks import Block
from generator.outputs.press.columns import goes_in, total
from generator.outputs.press.letters import Letters
from generator.outputs.press.paper import Paper
from generator.outputs.press.reckoner import reckoner, set_table
from generator.outputs.press.steps import Density, SetSteps, set_steps, step_blocks
from generator.views.card import CardView

# A column so wide that no line ends in it.
_ENDLESS = 1e6


@dataclass(frozen=True, slots=True)
class Plan:
    """One way to set a card: what is around its steps, number of columns, density; and what came of it.

    `needed` is the length of column that the blocks take, in mm.
    """

    around: Around
    count: int
    density: Density
    blocks: tuple[Block, ...]
    needed: float

    @property
    def paper(self) -> Paper:
        """The sheet."""
        return self.around.paper

    @property
    def letters(self) -> Letters:
        """The letters."""
        return self.around.letters

    @property
    def height(self) -> float:
        """Height of a column in mm."""
        return self.around.height

    @property
    def left(self) -> float:
        """How far the columns of steps are moved in by the rail, in mm."""
        around = self.around
        return around.rail + around.letters.gutter if around.rail else 0.0

    @property
    def column(self) -> float:
        """Width of a column of steps in mm."""
        room = self.around.paper.inner_width - self.left
        return (room - (self.count - 1) * self.around.letters.gutter) / self.count

    @property
    def room(self) -> float:
        """Length of column that the sheet has."""
        return max(0.0, self.around.height) * self.count

    @property
    def whole(self) -> bool:
        """True when no word had to be broken."""
        around = self.around
        parts = (around.head, around.foot, *around.top, *self.blocks)
        return around.along[1] and not any(block.split for block in parts)

    @property
    def fits(self) -> bool:
        """True when every block goes in."""
        around = self.around
        if around.height <= 0 or around.along[0] > around.height:
            return False
        if self.needed > (around.height + around.letters.space) * self.count:
            return False
        return goes_in(self.blocks, around.height, self.count)


@dataclass(frozen=True, slots=True)
class Way:
    """A sheet, the number of columns of steps, a rail or none, a density."""

    paper: Paper
    count: int
    rail: bool
    density: Density


class Shared:
    """Kept while one card is being fitted, for its plans to share: each part is measured once."""

    def __init__(self, card: CardView) -> None:
        self.card = card
        self.surroundings = Surroundings(card)
        self.tables = tuple(map(set_table, card.tables))
        self._steps: dict[Density, SetSteps] = {}
        self._shortest: dict[Density, float] = {}

    def steps(self, density: Density) -> SetSteps:
        """The steps before they have a column."""
        if density not in self._steps:
            self._steps[density] = set_steps(self.card, density)
        return self._steps[density]

    def shortest(self, density: Density) -> float:
        """Length of the steps in cap heights if no line ever ended."""
        if density not in self._shortest:
            self._shortest[density] = total(step_blocks(self.steps(density), _ENDLESS, Letters(1.0)))
        return self._shortest[density]


def plan(shared: Shared, way: Way, cap: float) -> Plan:
    """The card set in that way with capitals of `cap` mm."""
    made = without_steps(shared, way, cap)
    card, letters, column = shared.card, made.letters, made.column
    if card.status == "withdrawn" or made.height <= 0:
        return made
    tables = tuple(reckoner(table, column, letters) for table in shared.tables)
    blocks = (*step_blocks(shared.steps(way.density), column, letters), *tables)
    return Plan(made.around, way.count, way.density, blocks, total(blocks))


def without_steps(shared: Shared, way: Way, cap: float) -> Plan:
    """The same before its steps are set: what room they will have."""
    return Plan(shared.surroundings.around(way.paper, way.rail, cap), way.count, way.density, (), 0.0)
