"""How far apart identical runs may start, in whole minutes: a scan, since every time of a run is fixed."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property, lru_cache
from math import ceil

from generator.planning.occupied import HANDS, PlannedRun, Spans

_SLIP = 1e-6
_KEPT = 64  # an edit of words leaves a run as it was, and it is asked the same again


@lru_cache(maxsize=_KEPT)
def clear_spacing(run: PlannedRun, parts: int, operators: int = 1) -> int:
    """The fewest whole minutes between the starts of so many identical runs that none waits for another.

    Operators keep their part and take turns, all of them or fewer. No wait is drawn out. At least 1.
    """
    return min(_Fixed.of(run, turns).spacing(parts) for turns in _turns(operators))


def series_spacing(run: PlannedRun, operators: int = 1) -> int:
    """The same for as many runs as one likes, one after another."""
    found = (_Fixed.of(run, turns) for turns in _turns(operators))
    return min(fixed.spacing(fixed.at_once()) for fixed in found)


def _turns(operators: int) -> range:
    return range(1, operators + 1)


@lru_cache(maxsize=_KEPT)
def parts_within(run: PlannedRun, seconds: float, operators: int = 1) -> tuple[int, int]:
    """How many identical runs fit into a time, and how many minutes apart they start (0 for one or none)."""
    if run.seconds > seconds + _SLIP:
        return 0, 0
    found = (_Fixed.of(run, turns).within(seconds) for turns in _turns(operators))
    return max(found, key=lambda one: (one[0], -one[1]))


def operators_needed(run: PlannedRun, parts: int, spacing: int, operators: int) -> int:
    """How many operators, of so many at most, take turns where equal runs start that many minutes apart."""
    fitting = (
        turns for turns in _turns(operators) if _Fixed.of(run, turns).spacing(parts, spacing) == spacing
    )
    return next(fitting, operators)


def load_of(run: PlannedRun, what: str, operators: int = 1) -> float:
    """Seconds that one run keeps something busy, shared out over its room or over the operators."""
    room = operators if what == HANDS else run.room.get(what, 1)
    return sum(end - start for start, end in run.times(what)) / room


def bottleneck(run: PlannedRun, operators: int = 1) -> tuple[str, float]:
    """What sets the pace, with its seconds a part; hands before a place where both are the same."""
    loads = [(load_of(run, what, operators), what == HANDS, what) for what in run.things()]
    seconds, _, what = max(loads, default=(0.0, False, ""))
    return what, seconds


@dataclass(frozen=True)
class _Fixed:
    """A run as written: what it keeps busy when, what has room for more than one, and who takes turns."""

    seconds: float
    times: Mapping[str, Spans]
    room: Mapping[str, int]
    operators: int

    @classmethod
    def of(cls, run: PlannedRun, operators: int) -> "_Fixed":
        """A run with its turns."""
        return cls(run.seconds, run.spans, run.room, operators)

    @cached_property
    def of_two(self) -> int:
        """The fewest whole minutes between the starts of two."""
        return self.spacing(2)

    def at_once(self) -> int:
        """More runs than this never meet, for they start no closer than two do."""
        return ceil(self.seconds / 60 / self.of_two - _SLIP) + 1

    def within(self, seconds: float) -> tuple[int, int]:
        """How many fit into a time, and how many minutes apart."""
        best, at_once, spacing = (1, 0), self.at_once(), self.of_two
        for parts in range(2, at_once + 1):
            spacing = self.spacing(parts, spacing) if parts > 2 else spacing
            if self.seconds + (parts - 1) * spacing * 60 > seconds + _SLIP:
                return best
            best = (parts, spacing)
        return max(best, (1 + int((seconds - self.seconds + _SLIP) / 60 / spacing), spacing))

    def spacing(self, parts: int, least: int = 1) -> int:
        """The fewest whole minutes, from `least` on, at which nothing is wanted twice."""
        longest = max(ceil(self.seconds / 60 - _SLIP), 1)
        shut = self.shut(parts)
        crowded = {what: room for what, room in self.room.items() if 1 < room < parts and what in self.times}
        for minutes in range(least, longest):
            seconds = minutes * 60.0
            while shut and shut[0][1] <= seconds:
                shut.pop(0)
            if shut and shut[0][0] < seconds:
                continue
            if all(_fits(self.times[what], seconds, parts, room) for what, room in crowded.items()):
                return minutes
        return max(longest, least)

    def shut(self, parts: int) -> list[tuple[float, float]]:
        """Open spans of seconds between two starts at which two runs would clash, merged and in order."""
        spans: list[tuple[float, float]] = []
        for what, times in self.times.items():
            if what != HANDS and self.room.get(what, 1) > 1:
                continue
            every = self.operators if what == HANDS else 1
            spans += [
                ((start - other_end) / apart + _SLIP, (end - other) / apart - _SLIP)
                for apart in range(every, parts, every)
                for start, end in times
                for other, other_end in times
                if end > other
            ]
        return _merged(spans)


def _merged(spans: list[tuple[float, float]]) -> list[tuple[float, float]]:
    merged: list[tuple[float, float]] = []
    for low, high in sorted(spans):
        if merged and low < merged[-1][1]:
            merged[-1] = (merged[-1][0], max(merged[-1][1], high))
        elif high > max(low, 0.0):
            merged.append((low, high))
    return merged


def _fits(times: Spans, spacing: float, parts: int, room: int) -> bool:
    """Whether a place never holds more parts than it has room for."""
    edges = [
        edge
        for part in range(parts)
        for start, end in times
        for edge in ((start + part * spacing + _SLIP, 1), (end + part * spacing - _SLIP, -1))
    ]
    inside = 0
    for _, step in sorted(edges):
        inside += step
        if inside > room:
            return False
    return True
