"""Works a tape out on doubles, operation by operation in the order of the formula's text."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from generator.formulas import arithmetic
from generator.formulas.tape import (
    Column,
    Constant,
    Field,
    Given,
    Index,
    NextSize,
    Node,
    Number,
    Operation,
    Product,
    Row,
    Smallest,
    Tape,
    Total,
)

# More steps than this are a slip of the finger, not a bench.
MOST_STEPS = 10_000
# Far out, one more is the same double again.
FARTHEST = 1e9

Numbers = Mapping[str, float]
Loose = dict[int, Numbers | float]


@dataclass(frozen=True, slots=True)
class Givens:
    """What a tape is worked out from, in coherent SI."""

    quantities: Numbers
    rows: Mapping[str, Sequence[Numbers]] = field(default_factory=dict)
    sizes: Mapping[str, Sequence[float]] = field(default_factory=dict)
    records: Mapping[str, Numbers] = field(default_factory=dict)


def evaluate(tape: Tape, givens: Givens) -> float:
    """The value of the tape's last entry in coherent SI; not finite where there is none."""
    return _Run(tape, givens).value(tape.answer, {})


def holds(tape: Tape, givens: Givens) -> bool:
    """Whether the comparison that a tape ends in is true."""
    return bool(evaluate(tape, givens))


class _Run:
    """One working-out; entries outside lists and ranges are worked out once."""

    def __init__(self, tape: Tape, givens: Givens) -> None:
        self._inner = tape.inner
        self._givens = givens
        self._known: dict[int, float] = {}

    def value(self, node: Node, at: Loose) -> float:
        """The value of an entry; `at` holds the rows and whole numbers at hand."""
        key = id(node)
        if key in self._inner:
            return self._work_out(node, at)
        if key not in self._known:
            self._known[key] = self._work_out(node, at)
        return self._known[key]

    def _work_out(self, node: Node, at: Loose) -> float:
        match node:
            case Operation("choose", (condition, this, that)):
                return self.value(this if self.value(condition, at) else that, at)
            case Operation(word, args):
                return arithmetic.WORDS[word](*(self.value(arg, at) for arg in args))
            case Total() | Product() | Smallest() | NextSize():
                return self._go_through(node, at)
            case _:
                return self._leaf(node, at)

    def _leaf(self, node: Node, at: Loose) -> float:
        match node:
            case Number(value) | Constant(value=value):
                return value
            case Given(name):
                return self._givens.quantities[name]
            case Field(record, name):
                return self._givens.records[record][name]
            case Column(row, name):
                return self._column(at[id(row)], name)
            case Index():
                return self._number(at[id(node)])
        raise TypeError(f"no value for {type(node).__name__}")

    def _column(self, row: Numbers | float, name: str) -> float:
        return math.nan if isinstance(row, float) else row[name]

    def _number(self, number: Numbers | float) -> float:
        return number if isinstance(number, float) else math.nan

    def _go_through(self, node: Node, at: Loose) -> float:
        match node:
            case Total(row, body):
                return self._total(row, body, at)
            case Product(low, high, index, body):
                result = 1.0
                for i in _whole_numbers(self.value(low, at), self.value(high, at)):
                    result = result * self.value(body, {**at, id(index): i})
                return result
            case Smallest(low, high, index, condition):
                for i in _whole_numbers(self.value(low, at), self.value(high, at)):
                    if self.value(condition, {**at, id(index): i}):
                        return i
                return math.nan
            case NextSize(value, sizes):
                return arithmetic.next_size_up(self.value(value, at), tuple(self._givens.sizes[sizes]))
        raise TypeError(f"no value for {type(node).__name__}")

    def _total(self, row: Row, body: Node, at: Loose) -> float:
        result = 0.0
        for values in self._givens.rows[row.rows]:
            result = result + self.value(body, {**at, id(row): values})
        return result


def _whole_numbers(low: float, high: float) -> Sequence[float]:
    if not (abs(low) <= FARTHEST and abs(high) <= FARTHEST) or high - low >= MOST_STEPS:
        return (math.nan,)
    numbers = []
    number = low
    while number <= high:
        numbers.append(number)
        number = number + 1
    return numbers
