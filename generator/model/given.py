"""Values that an author gives to a formula: a quantity, a number, rows, a name, or another formula."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.model.located import Text
from generator.model.scalars import TIME, named, refuse, text, units_reader
from generator.units import Quantity, UnitsError, read_quantity


@dataclass(frozen=True, slots=True)
class FormulaRef:
    """`{formula: name}`: a value from a formula; `given` holds inputs for this value alone."""

    formula: Text
    given: "Mapping[str, Cell]" = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Number:
    """A bare number, as in `count: 180`, with the author's text."""

    value: float
    text: str


Cell = Quantity | Number
Row = Mapping[str, Cell]
Value = Quantity | Number | tuple[Row, ...] | FormulaRef | Text
_NUMBER = re.compile(r"[-+]?\d{1,12}(\.\d{1,12})?")
_NAME = re.compile(r"[a-z_][a-z0-9_-]*")


def read_value(value: object) -> Value:
    """A quantity, a number, a list of rows, `{formula: name}`, or the name of something in the job."""
    if isinstance(value, Mapping):
        return read_formula(value)
    if isinstance(value, list):
        return tuple(_row(item) for item in value)
    words = text(value)
    return Number(float(words), words) if _NUMBER.fullmatch(words) else _quantity(words)


def read_formula(value: Mapping[object, object]) -> FormulaRef:
    """`{formula: name}`, with `given: {input: value}` where an input is for this value alone."""
    fields = named(value)
    if isinstance(fields, dict) and {"formula"} <= set(fields) <= {"formula", "given"}:
        return FormulaRef(text(fields["formula"]), _row(fields["given"]) if "given" in fields else {})
    raise refuse(
        "unreadable", "a value or {formula: name} is expected here", "write `{formula: plating_time}`"
    )


def read_time(value: object) -> Quantity | FormulaRef:
    """A time, or the formula that gives it."""
    if isinstance(value, Mapping):
        return read_formula(value)
    found: Quantity = units_reader(read_quantity, (TIME,))(value)
    return found


def read_used(value: object) -> Quantity | Text:
    """How much is used: a quantity, `all`, `rest`, or the name of a value of the job."""
    words = text(value)
    return words if _NAME.fullmatch(words) else _quantity(words)


def read_power(value: object) -> Quantity | FormulaRef:
    """A current, or the formula that gives it."""
    if isinstance(value, Mapping):
        return read_formula(value)
    found: Quantity = units_reader(read_quantity)(value)
    return found


def _row(item: object) -> Row:
    fields = named(item)
    assert isinstance(fields, dict)
    return {name: _cell(inner) for name, inner in fields.items()}


def _cell(value: object) -> Cell:
    words = text(value)
    return Number(float(words), words) if _NUMBER.fullmatch(words) else _quantity(words)


def _quantity(words: str) -> Quantity:
    try:
        return read_quantity(words)
    except UnitsError as bad:
        raise refuse(bad.rule, bad.message, bad.fix) from None
