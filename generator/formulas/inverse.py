"""Solves a formula for an input that stands once in it, by undoing the tape from its last entry inwards."""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from generator.formulas.errors import FormulaError
from generator.formulas.evaluate import Givens, evaluate
from generator.formulas.formula import Formula
from generator.formulas.inputs import Input
from generator.formulas.settling import Value, in_range, settle
from generator.formulas.symbols import operate
from generator.formulas.tape import Given, Node, Operation, Tape
from generator.units import UNITS, Quantity, show_quantity
from generator.units.dimension import NUMBER, Dimension
from generator.units.quantity import from_si

# Put back into the formula, what was solved for must give the answer to this part of itself.
CLOSE = 1e-9


@dataclass(frozen=True)
class Inverse:
    """A formula turned round: `wanted` from the other inputs and the answer, which is named "answer"."""

    formula: Formula
    wanted: Input
    tape: Tape

    @cached_property
    def answer_input(self) -> Input:
        """The formula's answer as an input."""
        answer = self.formula.answer
        return Input("answer", answer.symbol, answer.means, answer.unit, answer.units)

    def evaluate(self, answer: Value, values: Mapping[str, Value]) -> Quantity:
        """The wanted input in its unit; FormulaError where there is none in its hard range."""
        name = self.formula.name
        others = tuple(each for each in self.formula.inputs if each.name != self.wanted.name)
        givens = settle((*others, self.answer_input), {**values, "answer": answer}, name)
        number = evaluate(self.tape, givens)
        if not math.isfinite(number):
            raise FormulaError(f"no {self.wanted.name} gives this answer", "check the numbers", name)
        quantity = Quantity(from_si(number, self.wanted.unit), self.wanted.unit)
        in_range(self.wanted, quantity, name)
        self._put_back(number, givens)
        return quantity

    def _put_back(self, number: float, givens: Givens) -> None:
        again = Givens(
            {**givens.quantities, self.wanted.name: number}, givens.rows, givens.sizes, givens.records
        )
        found, wanted = evaluate(self.formula.tape, again), givens.quantities["answer"]
        if not abs(found - wanted) <= CLOSE * max(abs(found), abs(wanted)):
            unit = self.formula.answer.unit
            shown = show_quantity(Quantity(from_si(found, unit), unit), 4)
            what = f"no {self.wanted.name} gives this answer; the nearest gives {shown}"
            raise FormulaError(what, "check the numbers", self.formula.name)


def solvable(formula: Formula) -> tuple[str, ...]:
    """The inputs for which the formula can be solved, in their order."""
    names = (each.name for each in formula.inputs if isinstance(each, Input))
    return tuple(name for name in names if _undo(formula, name) is not None)


def solve_for(formula: Formula, name: str) -> Inverse:
    """The formula turned round; FormulaError where the input stands more than once or cannot be undone."""
    wanted = formula.input(name)
    tape = _undo(formula, name)
    if not isinstance(wanted, Input) or tape is None:
        can = ", ".join(solvable(formula)) or "nothing"
        raise FormulaError(f"it cannot be solved for `{name}`", f"solve for: {can}", formula.name, given=name)
    return Inverse(formula, wanted, tape)


def _undo(formula: Formula, name: str) -> Tape | None:
    tape = formula.tape
    if tape.uses(name) != 1:
        return None
    # A lab's own formula counts in plain numbers, whatever its answer is shown in.
    dimension = NUMBER if formula.as_given else Dimension(UNITS[formula.answer.unit].dimension.powers)
    target: Node = Given("answer", dimension=dimension)
    node = tape.answer
    while not isinstance(node, Given):
        turned = _turn(node, target, name)
        if turned is None:
            return None
        node, target = turned
    return Tape(target)


def _turn(node: Node, target: Node, name: str) -> tuple[Node, Node] | None:
    """The argument that holds the input, and what it must equal for the entry to equal the target."""
    if not isinstance(node, Operation):
        return None
    place = next((i for i, arg in enumerate(node.args) if Tape(arg).uses(name)), None)
    if place is None:
        return None
    inner, others = node.args[place], [arg for i, arg in enumerate(node.args) if i != place]
    if others and len(others) == 1 and node.word in _OF_TWO:
        word, args = _OF_TWO[node.word][place](target, others[0])
        return inner, operate(word, args, node.line)
    if node.word == "power":
        return _unpower(node, target, inner)
    if node.word == "sqrt":
        return inner, operate("multiply", (target, target), node.line)
    if node.word in _OF_ONE:
        return inner, operate(_OF_ONE[node.word], (target,), node.line)
    return None


def _unpower(node: Operation, target: Node, inner: Node) -> tuple[Node, Node] | None:
    # Only a quantity that cannot be below nothing has one root.
    if not isinstance(inner, Given):
        return None
    exponent = getattr(node.args[1], "value", 0)
    if exponent == 2:
        return inner, operate("sqrt", (target,), node.line)
    if exponent == 4:
        return inner, operate("sqrt", (operate("sqrt", (target,), node.line),), node.line)
    return None


_Turned = tuple[str, tuple[Node, Node]]


def _less_other(target: Node, other: Node) -> _Turned:
    return "subtract", (target, other)


def _plus_other(target: Node, other: Node) -> _Turned:
    return "add", (target, other)


def _other_less(target: Node, other: Node) -> _Turned:
    return "subtract", (other, target)


def _over_other(target: Node, other: Node) -> _Turned:
    return "divide", (target, other)


def _times_other(target: Node, other: Node) -> _Turned:
    return "multiply", (target, other)


def _other_over(target: Node, other: Node) -> _Turned:
    return "divide", (other, target)


# For each word, how to undo it where the input is the first and where it is the second argument.
_OF_TWO = {
    "add": (_less_other, _less_other),
    "subtract": (_plus_other, _other_less),
    "multiply": (_over_other, _over_other),
    "divide": (_times_other, _other_over),
}
_OF_ONE = {"negate": "negate", "exp": "log", "log": "exp"}
