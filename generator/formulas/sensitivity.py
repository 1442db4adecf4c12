"""What a wrong number does to an answer, and what the wrong sum does."""

from collections.abc import Mapping
from dataclasses import dataclass

from generator.formulas.errors import FormulaError
from generator.formulas.formula import Formula
from generator.formulas.inputs import Input
from generator.formulas.settling import Value, as_quantity
from generator.units import UNITS, Quantity, Window

TENTH = 0.1
DEGREES = 5.0


@dataclass(frozen=True, slots=True)
class Shift:
    """One input a little off: by which part of itself (or by how many degrees), and what then comes out.

    `part` is below 0 for an input that is too low; for a temperature it is None, and `degrees` says how far.
    `change` is the change of the answer as a part of the right one.
    """

    name: str
    given: Quantity
    answer: Quantity
    right: Quantity
    change: float
    part: float | None = None
    degrees: float | None = None

    @property
    def says(self) -> str:
        """ "area 10 % low gives 4.5 A instead of 5.0 A", without units' typography."""
        return (
            f"{self.name} {self._how_far} gives {self._text(self.answer)} instead of {self._text(self.right)}"
        )

    @property
    def _how_far(self) -> str:
        if self.part is not None:
            return f"{abs(self.part) * 100:.0f} % {'low' if self.part < 0 else 'high'}"
        degrees = self.degrees or 0.0
        return f"{abs(degrees):.0f} degrees {'low' if degrees < 0 else 'high'}"

    @staticmethod
    def _text(quantity: Quantity) -> str:
        return f"{quantity.number:.{quantity.decimals or 0}f} {quantity.unit}".strip()


def sensitivity(formula: Formula, values: Mapping[str, Value]) -> tuple[Shift, ...]:
    """Each quantity a tenth low and a tenth high (a temperature five degrees), inside the hard range."""
    right = formula.evaluate(values)
    shifts = (
        _shift(formula, values, each, sign, right)
        for each in formula.inputs
        if isinstance(each, Input) and not each.whole and not each.clock
        for sign in (-1, 1)
    )
    return tuple(shift for shift in shifts if shift is not None)


def _shift(
    formula: Formula, values: Mapping[str, Value], each: Input, sign: int, right: Quantity
) -> Shift | None:
    value = values.get(each.name)
    start = each.default_quantity if value is None else _as_said(formula, each, value)
    if start is None or not start.number:
        return None
    is_scale = bool(UNITS[start.unit].offset)
    number = start.number + sign * DEGREES if is_scale else start.number * (1 + sign * TENTH)
    moved = Quantity(number, start.unit)
    try:
        answer = formula.evaluate({**values, each.name: moved})
    except FormulaError:
        return None
    change = (answer.number - right.number) / right.number if right.number else 0.0
    rounded = formula.answer.rounded
    part, degrees = (None, sign * DEGREES) if is_scale else (sign * TENTH, None)
    return Shift(each.name, moved, rounded(answer), rounded(right), change, part, degrees)


@dataclass(frozen=True, slots=True)
class OutsideUsual:
    """An input that is possible but not usual."""

    name: str
    given: Quantity
    usual: Window


def outside_usual(
    formula: Formula, values: Mapping[str, Value], usual: Mapping[str, Window] | None = None
) -> tuple[OutsideUsual, ...]:
    """The inputs outside their usual range: the lab's where it says one, else the formula's."""
    found = []
    for each in formula.inputs:
        if not isinstance(each, Input) or each.name not in values:
            continue
        window = (usual or {}).get(each.name) or each.usual_window
        given = _as_said(formula, each, values[each.name])
        if window is not None and window.dimension == given.dimension and not window.contains(given):
            found.append(OutsideUsual(each.name, given, window))
    return tuple(found)


def _as_said(formula: Formula, each: Input, value: Value) -> Quantity:
    """A quantity as it is: a lab's own formula on plain numbers takes it in any unit."""
    return value if isinstance(value, Quantity) else as_quantity(each, value, formula.name)
