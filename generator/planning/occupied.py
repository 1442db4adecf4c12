"""What one run keeps busy, and when: the operator's hands, and every place from going in to coming out."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import NamedTuple

from generator.model import FormulaRef, Lab, Step
from generator.walk import Ground, Moment, Walk

HANDS = "hands"
_AT_HAND = frozenset((
    "rinse", "dry", "clean", "check", "cool", "mount", "weigh", "add", "mix", "pour", "heat", "set", "wait",
    "act", "take-out", "empty", "switch-off",
))  # fmt: skip


Spans = tuple[tuple[float, float], ...]


class Pointer(NamedTuple):
    """A moment of a run: seconds from the beginning of a block, which is work without a choice of time."""

    block: int
    seconds: float


class Busy(NamedTuple):
    """`what` (a place's id, or hands) is taken from one moment to another."""

    what: str
    start: Pointer
    end: Pointer


class Rest(NamedTuple):
    """The wait between two blocks: seconds at least, as written, and at most (None: no limit)."""

    least: float
    usual: float
    most: float | None


class Since(NamedTuple):
    """From one moment to another at least and at most so many seconds may pass."""

    start: Pointer
    end: Pointer
    least: float
    most: float | None


@dataclass(frozen=True)
class PlannedRun:
    """A run for planning: the seconds of its blocks, the waits between them, what it keeps busy, its clocks.

    `room` says how many parts a place takes; what is not in it takes one.
    """

    name: str
    blocks: tuple[float, ...]
    rests: tuple[Rest, ...]
    busy: tuple[Busy, ...]
    since: tuple[Since, ...] = ()
    room: Mapping[str, int] = field(default_factory=dict, hash=False)

    @property
    def seconds(self) -> float:
        """The whole run as written."""
        return self.at(Pointer(len(self.blocks) - 1, self.blocks[-1])) if self.blocks else 0.0

    @cached_property
    def begins(self) -> tuple[float, ...]:
        """When each block begins, every wait as written, in seconds from the start."""
        found = [0.0]
        for length, rest in zip(self.blocks, self.rests, strict=False):
            found.append(found[-1] + length + rest.usual)
        return tuple(found)

    def at(self, point: Pointer) -> float:
        """Seconds from the start to a moment, every wait as written."""
        return self.begins[point.block] + point.seconds

    @cached_property
    def spans(self) -> Mapping[str, Spans]:
        """When the run, as written, keeps everything busy: neighbours that touch as one, in order."""
        found: dict[str, list[tuple[float, float]]] = {}
        for one in sorted(self.busy, key=lambda one: self.at(one.start)):
            start, end = self.at(one.start), self.at(one.end)
            joined = found.setdefault(one.what, [])
            if joined and start <= joined[-1][1] + 1e-9:
                joined[-1] = (joined[-1][0], max(joined[-1][1], end))
            elif end > start:
                joined.append((start, end))
        return {what: tuple(times) for what, times in found.items()}

    def times(self, what: str) -> Spans:
        """When the run, as written, keeps something busy."""
        return self.spans.get(what, ())

    def things(self) -> tuple[str, ...]:
        """Everything that the run keeps busy, each once."""
        return tuple(dict.fromkeys(one.what for one in self.busy))


def planned_run(ground: Ground, moments: tuple[Moment, ...]) -> PlannedRun:
    """A run, or a stretch of one, from moments of the straight run in their order."""
    builder = _Builder(ground)
    for index, moment in enumerate(moments):
        builder.visit(moment, last=index + 1 == len(moments))
    return builder.done(str(ground.procedure.id))


def run_stretches(ground: Ground, walk: Walk) -> tuple[PlannedRun, ...]:
    """The straight run cut at every pause: what has to be done at a stretch."""
    run = walk.straight
    last_visit = {id(moment.step): index for index, moment in enumerate(run)}
    out: list[PlannedRun] = []
    start = 0
    for index, moment in enumerate(run):
        pauses = moment.step.pause is not None and last_visit[id(moment.step)] == index
        if pauses or index + 1 == len(run):
            out.append(planned_run(ground, run[start : index + 1]))
            start = index + 1
    return tuple(out)


class _Builder:
    """Goes along the moments with an eye on what is still taken."""

    def __init__(self, ground: Ground) -> None:
        self.ground = ground
        self.blocks: list[float] = [0.0]
        self.rests: list[Rest] = []
        self.busy: list[Busy] = []
        self.taken: dict[str, Pointer] = {}
        self.ended: dict[str, Pointer] = {}
        self.since: list[Since] = []

    def now(self) -> Pointer:
        return Pointer(len(self.blocks) - 1, self.blocks[-1])

    def visit(self, moment: Moment, last: bool) -> None:
        """The step's own hands-on time, then its wait; a wait that leaves the hands free may be a rest."""
        step = moment.step
        self._clock(step)
        start = self.now()
        lasts = moment.after.clock.shortest - moment.before.clock.shortest
        hands = min(self.ground.hands_on(step) * moment.times, lasts)
        own = hands if step.stay != "here" else lasts
        self._pass(own)
        if own:
            self.busy.append(Busy(HANDS, start, self.now()))
        if step.stay != "here" and lasts > hands:
            self._wait(step, lasts - hands)
        self._places(moment, start)
        self.ended[str(step.id)] = self.now()
        if step.pause is not None and not last:
            low = step.pause.time.low.si if step.pause.time.low else 0.0
            self._rest(low, low, step.pause.time.high.si if step.pause.time.high else None)

    def _pass(self, seconds: float) -> None:
        self.blocks[-1] += seconds

    def _wait(self, step: Step, seconds: float) -> None:
        """A stay may be drawn out as far as its place allows, unless a sum gives its time; never cut."""
        place = self.ground.place(step)
        high = place.time.high if place and place.time else None
        free = step.do == "put-in" and high is not None and not isinstance(step.for_, FormulaRef)
        self._pass(seconds)
        if free and high is not None and high.si > seconds:
            self._rest(0.0, 0.0, high.si - seconds)

    def _rest(self, least: float, usual: float, most: float | None) -> None:
        self.rests.append(Rest(least, usual, most))
        self.blocks.append(0.0)

    def _clock(self, step: Step) -> None:
        if step.since is None:
            return
        start = self.ended.get(str(step.since.step))
        if start is not None:
            low, high = step.since.time.low, step.since.time.high
            self.since.append(Since(start, self.now(), low.si if low else 0.0, high.si if high else None))

    def _places(self, moment: Moment, start: Pointer) -> None:
        """A place is taken while the part is in it, its tray is full, it is held, or the hands work there."""
        held = set(_held(moment))
        left = set(self.taken) - held
        for what in sorted(left):
            self.busy.append(Busy(what, self.taken.pop(what), self.now()))
        for what in sorted(held):
            self.taken.setdefault(what, start)
        at = str(moment.step.at or "")
        if at and at not in held | left and moment.step.do in _AT_HAND:
            self.busy.append(Busy(at, start, self.now()))

    def done(self, name: str) -> PlannedRun:
        for what, start in self.taken.items():
            self.busy.append(Busy(what, start, self.now()))
        room = dict(_room(self.ground.lab, {one.what for one in self.busy}, self.ground))
        return PlannedRun(
            name, tuple(self.blocks), tuple(self.rests), tuple(self.busy), tuple(self.since), room
        )


def _held(moment: Moment) -> Iterator[str]:
    state = moment.after
    if state.text("in"):
        yield state.text("in")
    yield from state.names("tray")
    yield from (place for place in state.names("machine") if state.text("machine", place) == "held")


def _room(lab: Lab, used: set[str], ground: Ground) -> Iterator[tuple[str, int]]:
    """As declared; under current one part, for the supply is set for that one and off before it is lifted."""
    live = {str(step.at) for step in ground.procedure.steps if step.power is not None}
    for id, place in lab.places.items():
        if str(id) in used and place.room_for is not None:
            yield str(id), 1 if str(id) in live else place.room_for
