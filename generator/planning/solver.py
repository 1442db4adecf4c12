"""The one door to the solver: whole numbers, rules between them, and the best that keeps all rules."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from generator.problems import NewelError

Number = Any
"""A whole number that the solver chooses, or a sum of such numbers and known ones."""
Choice = Any
"""Something that holds or does not, as the solver chooses; `~` is its opposite."""


LONGEST = 7 * 86_400


@dataclass(frozen=True, slots=True)
class Best:
    """What the solver chose, and whether nothing better is possible."""

    values: Any
    proven: bool

    def value(self, number: Number) -> int:
        """The number as chosen."""
        return int(self.values.value(number))


class Puzzle:
    """Numbers and rules, collected and then solved; without the solver, making one raises NewelError."""

    def __init__(self) -> None:
        self.cp = _library()
        self.model = self.cp.CpModel()

    def number(self, low: int, high: int) -> Number:
        """A whole number between two ends, both allowed."""
        return self.model.new_int_var(low, high, "")

    def choice(self) -> Choice:
        """Yes or no."""
        return self.model.new_bool_var("")

    def rule(self, holds: Any, *when: Choice) -> None:
        """A comparison of numbers that has to hold, always or where all of `when` hold."""
        added = self.model.add(holds)
        if when:
            added.only_enforce_if(*when)

    def one_of(self, choices: Sequence[Choice]) -> None:
        """Exactly one holds."""
        self.model.add_exactly_one(choices)

    def crowd(self, spans: Sequence[tuple[Number, Number]], room: int) -> None:
        """At no moment are more than `room` of the spans under way."""
        intervals = []
        for start, end in spans:
            size = self.number(0, LONGEST)
            self.rule(size == end - start)
            intervals.append(self.model.new_interval_var(start, size, end, ""))
        self.model.add_cumulative(intervals, [1] * len(intervals), room)

    def in_turn(self, spans: Sequence[tuple[Number, Number, Choice]]) -> None:
        """Of the spans whose choice holds no two are under way at once."""
        intervals = []
        for start, end, counts in spans:
            size = self.number(0, LONGEST)
            self.rule(size == end - start)
            intervals.append(self.model.new_optional_interval_var(start, size, end, counts, ""))
        self.model.add_no_overlap(intervals)

    def guess(self, number: Number, value: int) -> None:
        """A value to try first."""
        self.model.add_hint(number, value)

    def smallest(self, number: Number, limit: float) -> Best | None:
        """The solution with the smallest number; None where none was found within `limit`.

        One worker, one seed, and a limit in the solver's own measure of work (of the order of a second each),
        so that the same question has the same answer on any machine.
        """
        self.model.minimize(number)
        solver = self.cp.CpSolver()
        solver.parameters.num_workers = 1
        solver.parameters.random_seed = 1
        solver.parameters.max_deterministic_time = limit
        status = solver.solve(self.model)
        if status not in (self.cp.OPTIMAL, self.cp.FEASIBLE):
            return None
        return Best(solver, status == self.cp.OPTIMAL)


def _library() -> Any:
    try:
        from ortools.sat.python import cp_model
    except ImportError as error:
        raise NewelError(
            "no-solver",
            "a plan of different parts needs the solver, which is not installed",
            "only identical parts with fixed times are planned without it; being large it is an extra",
            "install `newel[planning]`",
        ) from error
    return cp_model
