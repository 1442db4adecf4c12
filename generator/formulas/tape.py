"""The operator tape: what a formula does with its inputs, operation by operation."""

from dataclasses import dataclass
from functools import cached_property

from generator.units.dimension import NUMBER, Dimension


@dataclass(frozen=True, slots=True, eq=False, kw_only=True)
class Node:
    """One entry of the tape; `line` is where the formula's text made it."""

    dimension: Dimension = NUMBER
    line: int = 0

    @property
    def parts(self) -> tuple["Node", ...]:
        """The entries that this one is made from, in the order in which they are worked out."""
        return ()


@dataclass(frozen=True, slots=True, eq=False)
class Number(Node):
    """A number written in the formula; `symbol` where it has one, as pi does."""

    value: float
    symbol: str = ""


@dataclass(frozen=True, slots=True, eq=False)
class Constant(Node):
    """A constant of nature or of the trade, in coherent SI."""

    name: str
    symbol: str
    value: float
    unit: str
    source: str


@dataclass(frozen=True, slots=True, eq=False)
class Given(Node):
    """An input that is one quantity."""

    name: str


@dataclass(frozen=True, slots=True, eq=False)
class Field(Node):
    """A constant of the record chosen for an input, such as the density of the metal."""

    record: str
    name: str


@dataclass(frozen=True, slots=True, eq=False)
class Row(Node):
    """The row at hand while a list is gone through."""

    rows: str


@dataclass(frozen=True, slots=True, eq=False)
class Column(Node):
    """One column of the row at hand."""

    row: Row
    name: str

    @property
    def parts(self) -> tuple[Node, ...]:
        return (self.row,)


@dataclass(frozen=True, slots=True, eq=False)
class Index(Node):
    """The whole number at hand in a product or a search."""

    name: str = "i"


@dataclass(frozen=True, slots=True, eq=False)
class Operation(Node):
    """A word of the formula language applied to entries: add, divide, sqrt, less, choose."""

    word: str
    args: tuple[Node, ...]

    @property
    def parts(self) -> tuple[Node, ...]:
        return self.args


@dataclass(frozen=True, slots=True, eq=False)
class Total(Node):
    """The sum of an expression over the rows of a list, first row first, starting from 0."""

    row: Row
    body: Node

    @property
    def parts(self) -> tuple[Node, ...]:
        return (self.row, self.body)


@dataclass(frozen=True, slots=True, eq=False)
class Product(Node):
    """The product of an expression over whole numbers from low to high, starting from 1."""

    low: Node
    high: Node
    index: Index
    body: Node

    @property
    def parts(self) -> tuple[Node, ...]:
        return (self.low, self.high, self.index, self.body)


@dataclass(frozen=True, slots=True, eq=False)
class Smallest(Node):
    """The smallest whole number from low to high for which a condition holds; nothing if there is none."""

    low: Node
    high: Node
    index: Index
    condition: Node

    @property
    def parts(self) -> tuple[Node, ...]:
        return (self.low, self.high, self.index, self.condition)


@dataclass(frozen=True, slots=True, eq=False)
class NextSize(Node):
    """The smallest of a list of stock sizes that is not below a value; nothing if all are."""

    value: Node
    sizes: str

    @property
    def parts(self) -> tuple[Node, ...]:
        return (self.value,)


@dataclass(frozen=True, eq=False)
class Tape:
    """A recorded formula; `answer` is its last entry."""

    answer: Node

    @cached_property
    def nodes(self) -> tuple[Node, ...]:
        """Every entry once, each after what it is made from."""
        seen: dict[int, Node] = {}
        _collect(self.answer, seen)
        return tuple(seen.values())

    @cached_property
    def inner(self) -> frozenset[int]:
        """Ids of the entries that change while a list or a range is gone through."""
        loose: dict[int, frozenset[int]] = {}
        for node in self.nodes:
            inside = frozenset().union(*(loose[id(part)] for part in node.parts))
            if isinstance(node, Row | Index):
                inside = frozenset((id(node),))
            if isinstance(node, Total):
                inside -= {id(node.row)}
            if isinstance(node, Product | Smallest):
                inside -= {id(node.index)}
            loose[id(node)] = inside
        return frozenset(key for key, inside in loose.items() if inside)

    @cached_property
    def shared(self) -> frozenset[int]:
        """Ids of the entries that more than one other entry is made from."""
        counts: dict[int, int] = {}
        for node in self.nodes:
            for part in node.parts:
                counts[id(part)] = counts.get(id(part), 0) + 1
        return frozenset(key for key, count in counts.items() if count > 1)

    @cached_property
    def size(self) -> int:
        """How many entries the written-out formula has, where shared ones stand as often as they are used."""
        sizes: dict[int, int] = {}
        for node in self.nodes:
            sizes[id(node)] = 1 + sum(sizes[id(part)] for part in node.parts)
        return sizes[id(self.answer)]

    @cached_property
    def depth(self) -> int:
        """How many entries stand one inside the other at most."""
        depths: dict[int, int] = {}
        for node in self.nodes:
            depths[id(node)] = 1 + max((depths[id(part)] for part in node.parts), default=0)
        return depths[id(self.answer)]

    def uses(self, name: str) -> int:
        """How often the input of this name stands in the formula when it is written out."""
        counts: dict[int, int] = {}
        for node in self.nodes:
            found = isinstance(node, Given) and node.name == name
            counts[id(node)] = found + sum(counts[id(part)] for part in node.parts)
        return counts[id(self.answer)]


def _collect(node: Node, seen: dict[int, Node]) -> None:
    if id(node) in seen:
        return
    for part in node.parts:
        _collect(part, seen)
    seen[id(node)] = node
