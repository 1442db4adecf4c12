"""A value worked out by a formula, and all of them of one procedure."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from generator.model import FormulaRef, Step, Value
from generator.units import Quantity

Origin = Literal["step", "job", "formula", "lab"]


@dataclass(frozen=True, slots=True)
class Given:
    """An input's value and where it came from: the step, the job, another formula, the lab's calculators.

    An input that is not listed took the formula's own default; None could not be worked out.
    """

    name: str
    value: Value | None
    origin: Origin


@dataclass(frozen=True, slots=True)
class Sum:
    """A value worked out: its key (`job.area`, `copper-in.for`), the formula, what was given, the answer."""

    key: str
    formula: str
    inputs: tuple[Given, ...]
    answer: Quantity


@dataclass(frozen=True, slots=True)
class Sums:
    """All sums of a procedure by key, inner ones first: the order in which a page works them out again."""

    by_key: Mapping[str, Sum] = field(default_factory=dict)

    def time_of(self, step: Step) -> Quantity | None:
        """How long a step's `for` is, None where it has none or the formula could not be worked out."""
        given = step.for_
        return self.value(given, f"{step.id}.for") if isinstance(given, FormulaRef) else given

    def power_of(self, step: Step) -> Quantity | None:
        """To what a step brings the current, None where it does not or it could not be worked out."""
        return self.value(step.power.to if step.power else None, f"{step.id}.power")

    def value(self, given: Quantity | FormulaRef | None, key: str) -> Quantity | None:
        """A quantity as given, or the answer of the sum under a key."""
        if isinstance(given, FormulaRef):
            found = self.by_key.get(key)
            return found.answer if found else None
        return given
