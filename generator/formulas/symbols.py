"""Stand-ins for quantities: each operation on them is written on the tape."""

from collections.abc import Mapping
from typing import NoReturn, SupportsIndex

from generator.formulas.dimensions import COMPARISONS, dimension_of
from generator.formulas.errors import RefusedError
from generator.formulas.places import A_WORD, line_of_caller, refuse, refuse_builtin_sum, refuse_truth
from generator.formulas.tape import Column, Constant, Field, Given, Node, Number, Operation, Row
from generator.units.dimension import NUMBER, Dimension

Plain = int | float


def operate(word: str, args: tuple[Node, ...], line: int) -> Operation:
    """A new entry of the tape; RefusedError where dimensions do not allow it."""
    return Operation(word, args, dimension=dimension_of(word, args, line), line=line)


def raise_to(operand: Node, exponent: object, line: int) -> Operation:
    """A whole power from 2 to 4; RefusedError otherwise."""
    if not isinstance(exponent, int) or isinstance(exponent, bool) or exponent not in (2, 3, 4):
        raise RefusedError(
            line, "a power other than 2, 3 or 4 cannot be recorded", "write sqrt, or a product"
        )
    return operate("power", (operand, Number(float(exponent))), line)


class Symbol:
    """A quantity that is not known yet."""

    __slots__ = ("node",)
    __hash__ = object.__hash__

    def __init__(self, node: Node) -> None:
        self.node = node

    def _with(self, word: str, left: "Symbol | Plain", right: "Symbol | Plain") -> "Symbol":
        line = line_of_caller()
        return Symbol(operate(word, (entry(left, line), entry(right, line)), line))

    def __add__(self, other: "Symbol | Plain") -> "Symbol":
        return self._with("add", self, other)

    def __radd__(self, other: Plain) -> "Symbol":
        error = refuse_builtin_sum()
        if error:
            raise error
        return self._with("add", other, self)

    def __sub__(self, other: "Symbol | Plain") -> "Symbol":
        return self._with("subtract", self, other)

    def __rsub__(self, other: Plain) -> "Symbol":
        return self._with("subtract", other, self)

    def __mul__(self, other: "Symbol | Plain") -> "Symbol":
        return self._with("multiply", self, other)

    def __rmul__(self, other: Plain) -> "Symbol":
        return self._with("multiply", other, self)

    def __truediv__(self, other: "Symbol | Plain") -> "Symbol":
        return self._with("divide", self, other)

    def __rtruediv__(self, other: Plain) -> "Symbol":
        return self._with("divide", other, self)

    def __neg__(self) -> "Symbol":
        line = line_of_caller()
        return Symbol(operate("negate", (entry(self, line),), line))

    def __pos__(self) -> "Symbol":
        return self

    def __pow__(self, exponent: object) -> "Symbol":
        line = line_of_caller()
        return Symbol(raise_to(entry(self, line), exponent, line))

    def __rpow__(self, other: object) -> NoReturn:
        raise refuse("a power with a quantity above cannot be recorded", "write exp(x)")

    def __lt__(self, other: "Symbol | Plain") -> "Condition":
        return self._compare("less", self, other)

    def __le__(self, other: "Symbol | Plain") -> "Condition":
        return self._compare("less or equal", self, other)

    def __gt__(self, other: "Symbol | Plain") -> "Condition":
        return self._compare("less", other, self)

    def __ge__(self, other: "Symbol | Plain") -> "Condition":
        return self._compare("less or equal", other, self)

    def _compare(self, word: str, left: "Symbol | Plain", right: "Symbol | Plain") -> "Condition":
        return Condition(self._with(word, left, right).node)

    def __eq__(self, other: object) -> NoReturn:
        raise refuse("`==` cannot be recorded", "compare with < or >")

    def __ne__(self, other: object) -> NoReturn:
        raise refuse("`!=` cannot be recorded", "compare with < or >")

    def __bool__(self) -> NoReturn:
        raise refuse_truth()

    def __float__(self) -> NoReturn:
        raise refuse("a quantity is turned into a bare number", A_WORD)

    def __int__(self) -> NoReturn:
        raise refuse("a quantity is turned into a whole number", "write whole_down or whole_up")

    def __index__(self) -> NoReturn:
        raise refuse("a quantity is used to count", "write product(low, high, ...) or smallest(...)")

    def __iter__(self) -> NoReturn:
        raise refuse("`for` over a quantity cannot be recorded", "write total(rows, lambda row: ...)")

    def __len__(self) -> NoReturn:
        raise refuse("`len` cannot be recorded", "give the number as an input of its own")

    def __round__(self, digits: SupportsIndex | None = None) -> NoReturn:
        raise refuse("`round` cannot be recorded", "write nearest(value, step)")

    def __abs__(self) -> NoReturn:
        raise refuse("`abs` cannot be recorded", "write larger(x, -x)")

    def __floordiv__(self, other: object) -> NoReturn:
        raise refuse("`//` cannot be recorded", "write whole_down(a / b)")

    def __rfloordiv__(self, other: object) -> NoReturn:
        raise refuse("`//` cannot be recorded", "write whole_down(a / b)")

    def __mod__(self, other: object) -> NoReturn:
        raise refuse("`%` cannot be recorded", "write a - b * whole_down(a / b)")

    def __rmod__(self, other: object) -> NoReturn:
        raise refuse("`%` cannot be recorded", "write a - b * whole_down(a / b)")

    def __getattr__(self, name: str) -> NoReturn:
        if name.startswith("__"):
            raise AttributeError(name)
        raise refuse(f"`.{name}` of a quantity cannot be recorded", "name an input, or a column of a row")


class Condition(Symbol):
    """A comparison that is not decided yet: for choose and smallest."""

    __slots__ = ()


class RowSymbol:
    """The row at hand in a total; its columns are its attributes."""

    def __init__(self, row: Row, columns: Mapping[str, Dimension] | None) -> None:
        self._row = row
        self._columns = columns

    def __getattr__(self, name: str) -> Symbol:
        if name.startswith("__"):
            raise AttributeError(name)
        return self.column(name, line_of_caller())

    def column(self, name: str, line: int) -> Symbol:
        """One column; RefusedError for a name that the list has not."""
        if self._columns is not None and name not in self._columns:
            known = ", ".join(self._columns)
            raise RefusedError(line, f"`{self._row.rows}` has no column `{name}`", f"use one of: {known}")
        dimension = NUMBER if self._columns is None else self._columns[name]
        return Symbol(Column(self._row, name, dimension=dimension, line=line))


class RowsSymbol(Symbol):
    """A list of rows, for total. Without columns given, any column is taken as a plain number."""

    __slots__ = ("columns", "name")

    def __init__(self, name: str, columns: Mapping[str, Dimension] | None) -> None:
        super().__init__(Number(0.0))
        self.name = name
        self.columns = columns


class SizesSymbol(RowsSymbol):
    """A list of stock sizes, for next_size_up."""

    __slots__ = ("dimension",)

    def __init__(self, name: str, dimension: Dimension) -> None:
        super().__init__(name, {})
        self.dimension = dimension


class RecordSymbol:
    """A row of a table of constants, such as a metal; its fields are its attributes."""

    def __init__(self, name: str, fields: Mapping[str, Dimension]) -> None:
        self._name = name
        self._fields = fields

    def __getattr__(self, name: str) -> Symbol:
        if name.startswith("__"):
            raise AttributeError(name)
        line = line_of_caller()
        if name not in self._fields:
            known = ", ".join(self._fields)
            raise RefusedError(line, f"`{self._name}` has no field `{name}`", f"use one of: {known}")
        return Symbol(Field(self._name, name, dimension=self._fields[name], line=line))


def entry(value: object, line: int) -> Node:
    """The tape's entry for a symbol or a plain number; RefusedError for anything else."""
    if isinstance(value, RowsSymbol):
        raise RefusedError(
            line, f"`{value.name}` is a list, and a list is no number", "write total(rows, ...)"
        )
    if isinstance(value, Symbol):
        return value.node
    if isinstance(value, int | float) and not isinstance(value, bool):
        return Number(float(value), line=line)
    raise RefusedError(line, f"a {type(value).__name__} is no quantity", "use inputs, numbers and words only")


def is_comparison(node: Node) -> bool:
    """Whether an entry is a yes or no."""
    return isinstance(node, Operation) and node.word in COMPARISONS


def given(name: str, dimension: Dimension) -> Symbol:
    """The stand-in for an input."""
    return Symbol(Given(name, dimension=dimension))


def constant(name: str, symbol: str, value: float, unit: str, source: str, dimension: Dimension) -> Symbol:
    """The stand-in for a constant; `value` in coherent SI."""
    return Symbol(Constant(name, symbol, value, unit, source, dimension=dimension))
