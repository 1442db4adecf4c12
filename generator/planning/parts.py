"""Different runs, or runs whose waits may be drawn out, started so that the last of them ends early."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from generator.planning.occupied import HANDS, Busy, PlannedRun, Pointer
from generator.planning.solver import LONGEST, Number, Puzzle


@dataclass(frozen=True, slots=True)
class TimedRun:
    """One part of a plan: its run, its operator from 0, when each block begins, and its end, in seconds."""

    run: PlannedRun
    operator: int
    blocks: tuple[int, ...]
    end: int


@dataclass(frozen=True, slots=True)
class PartsPlan:
    """Every part in the order asked for, when the last is done, and whether nothing shorter is possible."""

    parts: tuple[TimedRun, ...]
    end: int
    proven: bool


def plan_parts(runs: Sequence[PlannedRun], operators: int = 1, limit: float = 5.0) -> PartsPlan | None:
    """Start the runs so that the last ends as early as can be; None where none was found within `limit`.

    A part keeps its operator, waits lie between their least and their most. NewelError without the solver.
    """
    puzzle = _Line(runs, operators)
    best = puzzle.smallest(puzzle.end, limit)
    if best is None:
        return None
    parts = tuple(
        TimedRun(
            run,
            [best.value(does) for does in puzzle.does[part]].index(1),
            tuple(best.value(start) for start in puzzle.starts[part]),
            best.value(puzzle.ends[part]),
        )
        for part, run in enumerate(runs)
    )
    return PartsPlan(parts, best.value(puzzle.end), best.proven)


class _Line(Puzzle):
    """The second at which every block of every part begins, and who does it."""

    def __init__(self, runs: Sequence[PlannedRun], operators: int) -> None:
        super().__init__()
        self.runs = runs
        # One after another with every wait as written is always a plan, so no better one ends later.
        self.last = sum(ceil(run.seconds) + len(run.blocks) for run in runs)
        self.last += sum(ceil(clock.least) for run in runs for clock in run.since)
        self.starts = [self.blocks(run) for run in runs]
        self.ends = [
            starts[-1] + round(run.blocks[-1]) for run, starts in zip(runs, self.starts, strict=True)
        ]
        self.does = [[self.choice() for _ in range(operators)] for _ in runs]
        self.end = self.number(0, self.last)
        for end in self.ends:
            self.rule(self.end >= end)
        self.keep_clocks()
        self.share_places()
        self.share_hands(operators)
        self.keep_order()
        self.hint()

    def blocks(self, run: PlannedRun) -> list[Number]:
        """When each block of a run begins."""
        starts = [self.number(0, self.last)]
        for length, rest in zip(run.blocks[:-1], run.rests, strict=True):
            begins = self.number(0, self.last)
            waited = begins - starts[-1] - round(length)
            self.rule(waited >= ceil(rest.least))
            self.rule(waited <= (LONGEST if rest.most is None else max(int(rest.most), ceil(rest.least))))
            starts.append(begins)
        return starts

    def second(self, part: int, point: Pointer) -> Number:
        """When a moment of a part comes."""
        return self.starts[part][point.block] + round(point.seconds)

    def span(self, part: int, one: Busy) -> tuple[Number, Number]:
        """When a span of a part begins and ends."""
        return self.second(part, one.start), self.second(part, one.end)

    def keep_clocks(self) -> None:
        """What must follow in time does, for every part."""
        for part, run in enumerate(self.runs):
            for clock in run.since:
                passed = self.second(part, clock.end) - self.second(part, clock.start)
                self.rule(passed >= ceil(clock.least))
                if clock.most is not None:
                    self.rule(passed <= int(clock.most))

    def share_places(self) -> None:
        """No place holds more parts than it has room for, by the least that any of the runs says."""
        for what in dict.fromkeys(what for run in self.runs for what in run.things() if what != HANDS):
            room = min(run.room.get(what, 1) for run in self.runs if what in run.things())
            spans = [
                self.span(part, one)
                for part, run in enumerate(self.runs)
                for one in run.busy
                if one.what == what
            ]
            self.crowd(spans, room)

    def share_hands(self, operators: int) -> None:
        """Every part has one operator, who never has both hands in two parts at once."""
        for does in self.does:
            self.one_of(does)
        for operator in range(operators):
            self.in_turn([
                (*self.span(part, one), self.does[part][operator])
                for part, run in enumerate(self.runs)
                for one in run.busy
                if one.what == HANDS
            ])  # fmt: skip

    def keep_order(self) -> None:
        """Equal parts begin in their order, and the first part is the first operator's: less to try."""
        for part, (one, other) in enumerate(pairwise(self.runs)):
            if one == other:
                self.rule(self.starts[part][0] <= self.starts[part + 1][0])
        self.rule(self.does[0][0] == 1)

    def hint(self) -> None:
        """Where to begin to look: one part after another by the first operator."""
        begin = 0
        for part, run in enumerate(self.runs):
            at = begin
            for block, start in enumerate(self.starts[part]):
                self.guess(start, at)
                at += round(run.blocks[block]) + (
                    ceil(run.rests[block].usual) if block < len(run.rests) else 0
                )
            begin = at
            for operator, does in enumerate(self.does[part]):
                self.guess(does, int(operator == 0))
