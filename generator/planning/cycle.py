"""The fastest steady rhythm of identical parts where waits may be drawn out: one part every so often."""

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil

from generator.planning.occupied import HANDS, Busy, PlannedRun, Pointer
from generator.planning.solver import Number, Puzzle

Travel = Callable[[int, int], int]
MOST_TURNS = 3


@dataclass(frozen=True, slots=True)
class Cycle:
    """Seconds from part to part, when each block of a part begins, and whether less is impossible."""

    seconds: int
    blocks: tuple[int, ...]
    proven: bool


def smallest_cycle(run: PlannedRun, travel: Travel = lambda _, __: 0, limit: float = 5.0) -> Cycle | None:
    """Identical parts for ever, one pair of hands, one part in a place; None where none was found.

    `travel` gives the seconds that the hands need from the end of their i-th span to the start of their j-th.
    """
    puzzle = _Phases(run)
    for what in run.things():
        spans = [one for one in run.busy if one.what == what]
        for i, one in enumerate(spans):
            puzzle.rule(puzzle.cycle >= puzzle.length(one) + (travel(i, i) if what == HANDS else 0))
            for j in range(i + 1, len(spans)):
                there, back = (travel(i, j), travel(j, i)) if what == HANDS else (0, 0)
                puzzle.apart(one, spans[j], there, back)
    best = puzzle.smallest(puzzle.cycle, limit)
    if best is None:
        return None
    return Cycle(best.value(puzzle.cycle), tuple(best.value(start) for start in puzzle.starts), best.proven)


class _Phases(Puzzle):
    """Every moment by where in the cycle it falls: its second, less the whole cycles that are in it."""

    def __init__(self, run: PlannedRun) -> None:
        super().__init__()
        self.slowest = round(run.seconds) + len(run.blocks)
        self.cycle = self.number(1, self.slowest)
        self.starts: list[Number] = [0]
        self.known: dict[Pointer, Number] = {Pointer(0, 0.0): 0}
        for block, (length, rest) in enumerate(zip(run.blocks[:-1], run.rests, strict=True)):
            least = ceil(rest.least)
            most = self.slowest if rest.most is None else min(int(rest.most), self.slowest)
            passed = round(length) + self.number(least, max(most, least))
            self.starts.append(self.starts[-1] + passed)
            self.known[Pointer(block + 1, 0.0)] = self.after(self.known[Pointer(block, 0.0)], passed)
        self.keep_clocks(run)

    def keep_clocks(self, run: PlannedRun) -> None:
        """What must follow in time does."""
        for clock in run.since:
            passed = self.second(clock.end) - self.second(clock.start)
            self.rule(passed >= ceil(clock.least))
            if clock.most is not None:
                self.rule(passed <= int(clock.most))

    def second(self, point: Pointer) -> Number:
        """When a moment comes, from the start of its own part."""
        return self.starts[point.block] + round(point.seconds)

    def length(self, one: Busy) -> Number:
        """How long a span is."""
        return self.second(one.end) - self.second(one.start)

    def after(self, phase: Number, seconds: Number) -> Number:
        """The phase so many seconds after another; at most MOST_TURNS cycles begin in between."""
        found = self.number(0, self.slowest)
        self.rule(found <= self.cycle - 1)
        turns = [self.choice() for _ in range(MOST_TURNS + 1)]
        self.one_of(turns)
        for count, turn in enumerate(turns):
            self.rule(found == phase + seconds - count * self.cycle, turn)
        return found

    def phase(self, point: Pointer) -> Number:
        """Where in the cycle a moment falls."""
        if point not in self.known:
            self.known[point] = self.after(self.known[Pointer(point.block, 0.0)], round(point.seconds))
        return self.known[point]

    def apart(self, one: Busy, other: Busy, there: int, back: int) -> None:
        """Neither span reaches into the other, in this cycle or over its end."""
        mine, theirs = self.phase(one.start), self.phase(other.start)
        long, other_long = self.length(one) + there, self.length(other) + back
        first = self.choice()
        self.rule(mine + long <= theirs, first)
        self.rule(theirs + other_long <= mine + self.cycle, first)
        self.rule(theirs + other_long <= mine, ~first)
        self.rule(mine + long <= theirs + self.cycle, ~first)
