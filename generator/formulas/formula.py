"""A formula: what it is called, what it decides, what it asks for, what it answers, who vouches for it."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Any, Literal

from generator.formulas import arithmetic
from generator.formulas.as_given import plain_numbers
from generator.formulas.errors import FormulaError
from generator.formulas.evaluate import evaluate, holds
from generator.formulas.inputs import AnyInput, Input, Rows
from generator.formulas.settling import Values, as_quantity, settle
from generator.formulas.tape import Tape
from generator.formulas.tracing import record
from generator.units import UNITS, Clock, DimensionError, Quantity, show_quantity
from generator.units.dimension import Dimension
from generator.units.quantity import from_si

MIDNIGHT = 24 * 60
MOST_DECIMALS = 12
MOST_FIGURES = 4  # A bench measures no finer than that.
Toward = Literal["nearest", "up", "down"]


@dataclass(frozen=True, slots=True)
class Answer:
    """What comes out.

    decimals: as many are shown in `unit`; toward: which way the last is rounded; never_above: what the
    answer may not exceed, in words for the page; like: the input whose unit the answer has, for a lab's own
    formula on plain numbers; clock: a time of day, in minutes after midnight.
    """

    symbol: str
    means: str
    unit: str
    units: tuple[str, ...] = ()
    decimals: int = 1
    toward: Toward = "nearest"
    never_above: str = ""
    like: str = ""
    clock: bool = False

    @property
    def all_units(self) -> tuple[str, ...]:
        """The unit first shown and the others."""
        return tuple(dict.fromkeys((self.unit, *self.units)))

    def decimals_in(self, unit: str) -> int:
        """Decimals in another unit that show no less than those in the first."""
        ratio = UNITS[unit].factor / UNITS[self.unit].factor
        return max(0, self.decimals + math.ceil(math.log10(ratio) - 1e-9))

    def rounded(self, quantity: Quantity) -> Quantity:
        """The quantity as it is shown, rounded the way that the formula asks for."""
        decimals = self.decimals_in(quantity.unit) if quantity.unit in self.all_units else self.decimals
        decimals = self._telling_decimals(quantity.number, decimals)
        scale = 10.0**decimals
        number = quantity.number * scale
        match self.toward:
            case "up":
                whole = arithmetic.whole_up(number)
            case "down":
                whole = arithmetic.whole_down(number)
            case _:
                whole = arithmetic.nearest(number, 1.0)
        return Quantity(whole / scale + 0.0, quantity.unit, decimals)

    def _telling_decimals(self, number: float, decimals: int) -> int:
        """More decimals where fewer than two figures were left, fewer where over four: 0.04 A, 3024 g."""
        if self.toward == "nearest" and not self.clock:
            while decimals < MOST_DECIMALS and 0 < abs(number) < float(f"1e{1 - decimals}"):
                decimals += 1
            while decimals > 0 and abs(number) >= float(f"1e{MOST_FIGURES - decimals}"):
                decimals -= 1
        return decimals

    def show(self, quantity: Quantity) -> str:
        """The answer as printed: rounded the way that the formula asks for, a time of day as 16:40."""
        rounded = self.rounded(quantity)
        if self.clock and 0 <= rounded.number <= MIDNIGHT:
            return str(Clock(int(rounded.to("min").number)))
        return show_quantity(rounded)


@dataclass(frozen=True, slots=True)
class Example:
    """Numbers worked out by hand or elsewhere: inputs and the answer as an author writes them."""

    given: Mapping[str, Any]
    answer: str
    source: str = ""


@dataclass(frozen=True, slots=True)
class Requirement:
    """A comparison between inputs that must hold, and what to say when it does not."""

    function: Callable[..., Any]
    otherwise: str


@dataclass(frozen=True, slots=True)
class Naive:
    """The sum as people do it wrongly, and what they forget."""

    function: Callable[..., Any]
    forgets: str


@dataclass(frozen=True)
class Formula:
    """One formula of the library or of a lab.

    function: plain Python over quantities, called once with stand-ins; recorded: its tape where it was
    read and not called; as_given: a lab's formula on plain numbers, without units of its own; in_words: what
    is printed in place of a formula that nobody could read.
    """

    name: str
    title: str
    decides: str
    inputs: tuple[AnyInput, ...]
    answer: Answer
    source: str
    function: Callable[..., Any] | None = None
    cautions: tuple[str, ...] = ()
    who: Literal["everyone", "staff"] = "everyone"
    examples: tuple[Example, ...] = ()
    requires: tuple[Requirement, ...] = ()
    naive: Naive | None = None
    as_given: bool = False
    in_words: str = ""
    recorded: Tape | None = field(default=None, compare=False, repr=False)

    @cached_property
    def tape(self) -> Tape:
        """The recorded operations; FormulaError where it cannot be recorded or dimensions do not fit."""
        if self.recorded is not None:
            return self.recorded
        if self.function is None:
            raise FormulaError("it has neither a function nor a tape", "give one", self.name)
        tape = record(self.function, self._stand_ins, self.name)
        self._check_dimension(tape)
        return tape

    @cached_property
    def requirement_tapes(self) -> tuple[Tape, ...]:
        """The recorded comparisons of `requires`, in their order."""
        return tuple(record(each.function, self._stand_ins, self.name) for each in self.requires)

    @cached_property
    def naive_tape(self) -> Tape | None:
        """The recorded wrong sum, if one is told."""
        return None if self.naive is None else record(self.naive.function, self._stand_ins, self.name)

    @cached_property
    def _stand_ins(self) -> Mapping[str, object]:
        return {each.name: each.stand_in() for each in self.inputs}

    def _check_dimension(self, tape: Tape) -> None:
        wanted = UNITS[self.answer.unit].dimension
        found = tape.answer.dimension
        if wanted.powers != found.powers:
            what = f"the answer comes out as {found}, and {self.answer.unit} is {Dimension(wanted.powers)}"
            raise FormulaError(what, "check the formula", self.name, tape.answer.line)

    def input(self, name: str) -> AnyInput | None:
        """The input of this name."""
        return next((each for each in self.inputs if each.name == name), None)

    def evaluate(self, values: Values) -> Quantity:
        """The answer, not rounded, in `answer.unit`; FormulaError where a number cannot be or is missing."""
        if self.as_given:
            return self._evaluate_as_given(values)
        givens = settle(self.inputs, values, self.name)
        for requirement, tape in zip(self.requires, self.requirement_tapes, strict=True):
            if not holds(tape, givens):
                raise FormulaError(requirement.otherwise, "check the numbers", self.name)
        return Quantity(
            from_si(self._finite(evaluate(self.tape, givens)), self.answer.unit), self.answer.unit
        )

    def evaluate_naive(self, values: Values) -> Quantity | None:
        """What the wrong sum gives for the same values, if one is told."""
        if self.naive_tape is None:
            return None
        number = evaluate(self.naive_tape, settle(self.inputs, values, self.name))
        return Quantity(from_si(number, self.answer.unit), self.answer.unit)

    def with_pint(self, **values: Any) -> Any:
        """The answer as a pint quantity from pint quantities, in rows too; records as in `evaluate`."""
        from generator.units.pint_door import to_pint

        ours = {name: _from_pint(self, self.input(name), value) for name, value in values.items()}
        return to_pint(self.evaluate(ours))

    def _evaluate_as_given(self, values: Values) -> Quantity:
        plain, units = plain_numbers(values, self.answer.like, self.answer.unit)
        number = self._finite(evaluate(self.tape, settle(self.inputs, plain, self.name)))
        if self.answer.like in units:
            return Quantity(number, units[self.answer.like])
        return Quantity(
            from_si(number, self.answer.unit) if self.answer.unit == "%" else number, self.answer.unit
        )

    def _finite(self, number: float) -> float:
        if math.isfinite(number):
            return number
        raise FormulaError("nothing comes out of these numbers", "check them against each other", self.name)


def _from_pint(formula: Formula, wanted: AnyInput | None, value: Any) -> Any:
    from generator.units.pint_door import from_pint_in

    if isinstance(wanted, Rows) and isinstance(value, tuple | list):
        columns = {column.name: column for column in wanted.columns}
        return tuple(
            {name: _from_pint(formula, columns.get(name), cell) for name, cell in row.items()}
            for row in value
        )
    if isinstance(wanted, Input) and hasattr(value, "magnitude"):
        try:
            return from_pint_in(value, wanted.all_units)
        except DimensionError as error:
            fix = f"give it in {wanted.unit}"
            raise FormulaError(str(error), fix, formula.name, given=wanted.name) from error
    return value


def check_examples(formula: Formula) -> tuple[str, ...]:
    """What is wrong with a formula's worked examples: nothing, or one sentence for each that disagrees."""
    return tuple(words for example in formula.examples if (words := _disagreement(formula, example)))


def _disagreement(formula: Formula, example: Example) -> str:
    wanted = as_quantity(Input("answer", "", "", formula.answer.unit), example.answer, formula.name)
    try:
        found = formula.evaluate(example.given).to(wanted.unit)
    except FormulaError as error:
        return str(error)
    half = 0.5 * 10.0 ** -(wanted.decimals or 0)
    if abs(found.number - wanted.number) <= half * (1 + 1e-9):
        return ""
    comes_out = f"{found.number:.6g} {found.unit}".strip()
    return f"{formula.name}: the worked example says {example.answer}, and {comes_out} comes out"
