"""Works a tape out on doubles, operation by operation in the order of the formula's text."""

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache

from generator.formulas import arithmetic
from generator.formulas.rising import stays_true
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


class _Run:
    """One working-out: the rows and whole numbers at hand, and what has been worked out once."""

    __slots__ = ("at", "givens", "known")

    def __init__(self, givens: "Givens") -> None:
        self.givens = givens
        self.at: dict[int, Numbers | float] = {}
        self.known: dict[int, float] = {}


Worked = Callable[[_Run], float]
Finder = Callable[[float, float, Callable[[float], bool]], float]


@dataclass(frozen=True, slots=True)
class Givens:
    """What a tape is worked out from, in coherent SI."""

    quantities: Numbers
    rows: Mapping[str, Sequence[Numbers]] = field(default_factory=dict)
    sizes: Mapping[str, Sequence[float]] = field(default_factory=dict)
    records: Mapping[str, Numbers] = field(default_factory=dict)


def evaluate(tape: Tape, givens: Givens) -> float:
    """The value of the tape's last entry in coherent SI; not finite where there is none."""
    return _prepared(tape)(_Run(givens))


def holds(tape: Tape, givens: Givens) -> bool:
    """Whether the comparison that a tape ends in is true."""
    return bool(evaluate(tape, givens))


@lru_cache(maxsize=1_000)
def _prepared(tape: Tape) -> Worked:
    """The tape as functions that call one another, made once: looking at an entry costs more than its sum."""
    made: dict[int, Worked] = {}
    for node in tape.nodes:
        key = id(node)
        work = _worker(node, made)
        # Entries outside lists and ranges are worked out once.
        made[key] = _once(key, work) if node.parts and key not in tape.inner else work
    return made[id(tape.answer)]


def _once(key: int, work: Worked) -> Worked:
    def known(run: _Run) -> float:
        value = run.known.get(key)
        if value is None:
            value = run.known[key] = work(run)
        return value

    return known


def _worker(node: Node, made: Mapping[int, Worked]) -> Worked:
    match node:
        case Operation(word="choose", args=args):
            return _choose(*(made[id(arg)] for arg in args))
        case Operation(word=word, args=args):
            return _operation(arithmetic.WORDS[word], tuple(made[id(arg)] for arg in args))
        case Total(row=row, body=body):
            return _total(row, made[id(body)])
        case Product(low, high, index, body):
            return _product(made[id(low)], made[id(high)], id(index), made[id(body)])
        case Smallest(low, high, index, condition):
            find = _halved if stays_true(condition, index) else _first
            return _smallest(made[id(low)], made[id(high)], id(index), made[id(condition)], find)
        case NextSize(value, sizes):
            number = made[id(value)]
            return lambda run: arithmetic.next_size_up(number(run), tuple(run.givens.sizes[sizes]))
        case _:
            return _leaf(node)


def _leaf(node: Node) -> Worked:
    match node:
        case Number(value) | Constant(value=value):
            return lambda _: value
        case Given(name):
            return lambda run: run.givens.quantities[name]
        case Field(record, name):
            return lambda run: run.givens.records[record][name]
        case Column(row, name):
            return _column(id(row), name)
        case Index():
            return _index(id(node))
        case Row():
            return lambda _: math.nan  # a row has columns and is no number
    raise TypeError(f"no value for {type(node).__name__}")


def _column(key: int, name: str) -> Worked:
    def column(run: _Run) -> float:
        row = run.at[key]
        return math.nan if isinstance(row, float) else row[name]

    return column


def _index(key: int) -> Worked:
    def index(run: _Run) -> float:
        number = run.at[key]
        return number if isinstance(number, float) else math.nan

    return index


def _choose(condition: Worked, this: Worked, that: Worked) -> Worked:
    return lambda run: this(run) if condition(run) else that(run)


def _operation(word: Callable[..., float], args: tuple[Worked, ...]) -> Worked:
    if len(args) == 1:
        only = args[0]
        return lambda run: word(only(run))
    if len(args) == 2:
        first, second = args
        return lambda run: word(first(run), second(run))
    return lambda run: word(*(arg(run) for arg in args))


def _total(row: Row, body: Worked) -> Worked:
    key, rows = id(row), row.rows

    def total(run: _Run) -> float:
        result = 0.0
        for values in run.givens.rows[rows]:
            run.at[key] = values
            result = result + body(run)
        return result

    return total


def _product(low: Worked, high: Worked, key: int, body: Worked) -> Worked:
    def product(run: _Run) -> float:
        result = 1.0
        for number in _whole_numbers(low(run), high(run)):
            run.at[key] = number
            result = result * body(run)
        return result

    return product


def _smallest(low: Worked, high: Worked, key: int, condition: Worked, find: Finder) -> Worked:
    def smallest(run: _Run) -> float:
        def holds(number: float) -> bool:
            run.at[key] = number
            return bool(condition(run))

        return find(low(run), high(run), holds)

    return smallest


def _first(low: float, high: float, holds: Callable[[float], bool]) -> float:
    return next((number for number in _whole_numbers(low, high) if holds(number)), math.nan)


def _halved(low: float, high: float, holds: Callable[[float], bool]) -> float:
    """The same for a condition that stays true: the last number tells whether there is one at all."""
    if not (0 <= low <= high <= FARTHEST and low == math.floor(low) and high - low < MOST_STEPS):
        return _first(low, high, holds)
    false, true = low - 1, float(math.floor(high))
    if not holds(true):
        return math.nan
    while true - false > 1:
        middle = float((false + true) // 2)
        false, true = (false, middle) if holds(middle) else (middle, true)
    return true


def _whole_numbers(low: float, high: float) -> Iterator[float]:
    if not (abs(low) <= FARTHEST and abs(high) <= FARTHEST) or high - low >= MOST_STEPS:
        yield math.nan
        return
    number = low
    while number <= high:
        yield number
        number = number + 1
