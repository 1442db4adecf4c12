"""The words that a formula may use besides + - * / and whole powers."""

import math
from collections.abc import Callable

from generator.formulas.dimensions import COMPARISONS
from generator.formulas.errors import RefusedError
from generator.formulas.places import line_of_caller
from generator.formulas.symbols import (
    Plain,
    RowsSymbol,
    RowSymbol,
    SizesSymbol,
    Symbol,
    entry,
    operate,
)
from generator.formulas.tape import (
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
from generator.units.dimension import NUMBER

Value = Symbol | Plain

pi = Symbol(Number(math.pi, "π"))


def _apply(word: str, *args: object) -> Symbol:
    line = line_of_caller()
    return Symbol(operate(word, tuple(entry(arg, line) for arg in args), line))


def sqrt(x: Value) -> Symbol:
    """The square root."""
    return _apply("sqrt", x)


def exp(x: Value) -> Symbol:
    """e to the power of a plain number."""
    return _apply("exp", x)


def log(x: Value) -> Symbol:
    """The natural logarithm of a plain number."""
    return _apply("log", x)


def larger(a: Value, b: Value) -> Symbol:
    """The larger of two."""
    return _apply("larger", a, b)


def smaller(a: Value, b: Value) -> Symbol:
    """The smaller of two."""
    return _apply("smaller", a, b)


def choose(condition: Symbol, this: Value, that: Value) -> Symbol:
    """This where the condition holds, else that."""
    line = line_of_caller()
    return Symbol(
        operate("choose", (_yes_or_no(condition, line), entry(this, line), entry(that, line)), line)
    )


def whole_up(x: Value) -> Symbol:
    """The next whole number up; a value within 1e-9 of a whole number is that number."""
    return _apply("whole_up", x)


def whole_down(x: Value) -> Symbol:
    """The next whole number down; a value within 1e-9 of a whole number is that number."""
    return _apply("whole_down", x)


def nearest(x: Value, step: Value = 1) -> Symbol:
    """The nearest multiple of a step; halves go away from zero."""
    return _apply("nearest", x, step)


def total(rows: Symbol, body: Callable[[RowSymbol], Value]) -> Symbol:
    """The sum of `body` over the rows of a list, in their order."""
    line = line_of_caller()
    if not isinstance(rows, RowsSymbol) or isinstance(rows, SizesSymbol):
        raise RefusedError(line, "total is asked of something that is no list of rows", "name a list of rows")
    row = Row(rows.name, line=line)
    return total_of(row, entry(body(RowSymbol(row, rows.columns)), line), line)


def total_of(row: Row, body: Node, line: int) -> Symbol:
    """The tape's entry for a total whose body is recorded already."""
    return Symbol(Total(row, body, dimension=body.dimension, line=line))


def product(low: Value, high: Value, body: Callable[[Symbol], Value]) -> Symbol:
    """The product of `body` over the whole numbers from low to high, both counted; 1 if there is none."""
    line = line_of_caller()
    index = Index(line=line)
    return product_of(entry(low, line), entry(high, line), index, entry(body(Symbol(index)), line), line)


def product_of(low: Node, high: Node, index: Index, body: Node, line: int) -> Symbol:
    """The tape's entry for a product whose body is recorded already."""
    _refuse_nest(body, line)
    if any(node.dimension.powers != NUMBER.powers for node in (low, high, body)):
        raise RefusedError(line, "product takes plain numbers", "divide by a unit first")
    return Symbol(Product(low, high, index, body, line=line))


def smallest(low: Value, high: Value, condition: Callable[[Symbol], Symbol]) -> Symbol:
    """The smallest whole number from low to high for which the condition holds."""
    line = line_of_caller()
    index = Index(line=line)
    return smallest_of(entry(low, line), entry(high, line), index, condition(Symbol(index)), line)


def smallest_of(low: Node, high: Node, index: Index, condition: object, line: int) -> Symbol:
    """The tape's entry for a search whose condition is recorded already."""
    found = _yes_or_no(condition, line)
    _refuse_nest(found, line)
    if any(node.dimension.powers != NUMBER.powers for node in (low, high)):
        raise RefusedError(line, "smallest takes plain numbers", "divide by a unit first")
    return Symbol(Smallest(low, high, index, found, line=line))


def next_size_up(value: Value, sizes: Symbol) -> Symbol:
    """The smallest stock size that is not below the value by more than a part in 1e9."""
    line = line_of_caller()
    node = entry(value, line)
    if not isinstance(sizes, SizesSymbol):
        raise RefusedError(line, "next_size_up is asked of something that is no list of sizes", "name a list")
    if sizes.dimension.powers != node.dimension.powers:
        what = f"{node.dimension} is looked up in a list of {sizes.dimension}"
        raise RefusedError(line, what, "bring both to the same dimension")
    return Symbol(NextSize(node, sizes.name, dimension=sizes.dimension, line=line))


def _yes_or_no(condition: object, line: int) -> Node:
    node = entry(condition, line)
    if isinstance(node, Operation) and node.word in COMPARISONS:
        return node
    raise RefusedError(line, "a comparison is expected here", "write a < b, a <= b, a > b or a >= b")


def _refuse_nest(body: Node, line: int) -> None:
    """A range inside a range could keep a page busy for hours."""
    if any(isinstance(node, Product | Smallest) for node in Tape(body).nodes):
        raise RefusedError(
            line, "a range inside a range cannot be recorded", "work the inner one out by itself"
        )
