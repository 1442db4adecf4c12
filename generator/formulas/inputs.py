"""What a formula may ask for: a quantity, a list of rows, a list of stock sizes, a row of a table."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.formulas.errors import FormulaError
from generator.formulas.symbols import RecordSymbol, RowsSymbol, SizesSymbol, Symbol, given
from generator.units import (
    UNITS,
    Quantity,
    Window,
    read_clock,
    read_number,
    read_numbers_window,
    read_quantity,
    read_window,
)
from generator.units.dimension import Dimension
from generator.units.quantity import to_si


@dataclass(frozen=True, slots=True)
class Input:
    """One quantity.

    symbol: as in a printed formula, "A_contact" for a raised-down word; unit: ASCII symbol, "" for a plain
    number; units: others that are offered; usual, hard: windows as an author writes them, "" for none;
    because: why a value outside `hard` is refused; default: as an author writes it, "" for none;
    whole: a count; clock: a time of day, which may be written 16:40.
    """

    name: str
    symbol: str
    means: str
    unit: str
    units: tuple[str, ...] = ()
    usual: str = ""
    hard: str = ""
    because: str = ""
    default: str = ""
    whole: bool = False
    clock: bool = False

    @property
    def dimension(self) -> Dimension:
        """What is measured."""
        return UNITS[self.unit].dimension

    @property
    def all_units(self) -> tuple[str, ...]:
        """The unit first shown and the others."""
        return tuple(dict.fromkeys((self.unit, *self.units)))

    @property
    def usual_window(self) -> Window | None:
        """The range that no one need think about."""
        return self._window(self.usual)

    @property
    def hard_window(self) -> Window | None:
        """The range outside which nothing is worked out."""
        return self._window(self.hard)

    @property
    def default_quantity(self) -> Quantity | None:
        """What is taken when nobody says."""
        return self.read(self.default) if self.default else None

    def read(self, text: str) -> Quantity:
        """The quantity that a text says; UnitsError where it is none."""
        if self.clock and ":" in text:
            return Quantity(float(read_clock(text).minutes), "min")
        return read_quantity(text) if self.unit else Quantity(read_number(text), "")

    def _window(self, text: str) -> Window | None:
        if not text:
            return None
        return read_window(text) if self.unit else read_numbers_window(text)

    def stand_in(self) -> Symbol:
        """The symbol that stands for it while the formula is recorded."""
        return given(self.name, Dimension(self.dimension.powers))


@dataclass(frozen=True, slots=True)
class Rows:
    """A list of rows, such as the holes of a board: each column is an input of its own."""

    name: str
    symbol: str
    means: str
    columns: tuple[Input, ...]

    def stand_in(self) -> RowsSymbol:
        """The list that stands for it while the formula is recorded."""
        return RowsSymbol(self.name, {c.name: Dimension(c.dimension.powers) for c in self.columns})


@dataclass(frozen=True, slots=True)
class Sizes:
    """A list of the sizes in stock, such as drills; `default` as an author writes them."""

    name: str
    symbol: str
    means: str
    unit: str
    default: tuple[str, ...] = ()

    def stand_in(self) -> SizesSymbol:
        """The list that stands for it while the formula is recorded."""
        return SizesSymbol(self.name, Dimension(UNITS[self.unit].dimension.powers))


@dataclass(frozen=True, slots=True)
class TableField:
    """One column of a table of constants."""

    name: str
    symbol: str
    means: str
    unit: str


@dataclass(frozen=True, slots=True)
class TableRow:
    """One row of a table of constants: a number for each column in the column's unit, and where from."""

    name: str
    title: str
    numbers: tuple[float, ...]
    source: str


@dataclass(frozen=True, slots=True)
class Table:
    """A table of constants."""

    name: str
    fields: tuple[TableField, ...]
    rows: tuple[TableRow, ...]

    def record(self, name: str) -> Mapping[str, float] | None:
        """The constants of one row in coherent SI, or None where there is no such row."""
        for row in self.rows:
            if row.name == name:
                pairs = zip(self.fields, row.numbers, strict=True)
                return {field.name: to_si(number, field.unit) for field, number in pairs}
        return None


@dataclass(frozen=True, slots=True)
class Choice:
    """A row of a table of constants, such as the metal that is plated."""

    name: str
    symbol: str
    means: str
    table: Table
    default: str = ""

    def stand_in(self) -> RecordSymbol:
        """The record that stands for it while the formula is recorded."""
        fields = {f.name: Dimension(UNITS[f.unit].dimension.powers) for f in self.table.fields}
        return RecordSymbol(self.name, fields)


AnyInput = Input | Rows | Sizes | Choice


def wanted(name: str, inputs: tuple[AnyInput, ...], formula: str) -> AnyInput:
    """The input of this name; FormulaError with the nearest name where there is none."""
    for candidate in inputs:
        if candidate.name == name:
            return candidate
    from difflib import get_close_matches

    near = get_close_matches(name, [candidate.name for candidate in inputs], n=1)
    fix = f"write `{near[0]}`" if near else "use: " + ", ".join(candidate.name for candidate in inputs)
    raise FormulaError(f"`{name}` is no input", fix, formula, given=name)
