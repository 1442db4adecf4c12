"""Walk the straight run, every redo with its mend, all redos in one run, and every pause."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import NamedTuple

from generator.model import Lab, Procedure, Stage, Step
from generator.sums import Sums
from generator.walk.effects import apply
from generator.walk.ground import Ground
from generator.walk.route import Redo, Visit, all_once, redos, straight_run
from generator.walk.state import START, Clock, Draft, State
from generator.walk.wearing import dress

MOST_STEPS = 500
MOST_MOMENTS = 20_000


class Moment(NamedTuple):
    """A visit with what was believed before and after; `path` says how work came here, if not straight."""

    step: Step
    stage: Stage
    before: State
    after: State
    path: str
    order: int
    times: float = 1.0
    mends: str = ""

    @property
    def straight(self) -> bool:
        """Whether this belongs to the run without a fault."""
        return self.path == ""


@dataclass(frozen=True, slots=True)
class Rest:
    """A pause as it is taken: the step behind which it stands, and the state in which all is left."""

    moment: Moment
    resumed: State


@dataclass(frozen=True, slots=True)
class End:
    """The state in which a path ends."""

    state: State
    path: str
    order: int


@dataclass(frozen=True)
class Walk:
    """All moments in the order walked (the straight run first), the pauses taken, and where the paths end."""

    moments: tuple[Moment, ...]
    rests: tuple[Rest, ...]
    ends: tuple[End, ...]
    paths: tuple[str, ...]
    finished: bool = True

    @cached_property
    def straight(self) -> tuple[Moment, ...]:
        """The run without a fault."""
        return tuple(moment for moment in self.moments if moment.path == "")

    @cached_property
    def by_verb(self) -> Mapping[str, tuple[Moment, ...]]:
        """Moments by what is done, each in the order walked."""
        return _by_verb(self.moments)

    @cached_property
    def straight_by_verb(self) -> Mapping[str, tuple[Moment, ...]]:
        """The same of the run without a fault."""
        return _by_verb(self.straight)


def _by_verb(moments: Iterable[Moment]) -> Mapping[str, tuple[Moment, ...]]:
    verbs: dict[str, list[Moment]] = {}
    for moment in moments:
        verbs.setdefault(moment.step.do, []).append(moment)
    return {verb: tuple(found) for verb, found in verbs.items()}


def walk_through(lab: Lab, procedure: Procedure, sums: Sums) -> Walk:
    """Walk every path; one too long or too branchy is walked to the bound, and `finished` is False."""
    visits = straight_run(procedure)
    if len(visits) > MOST_STEPS:
        return Walk((), (), (), (), finished=False)
    return _Walker(Ground(lab, procedure, sums), visits).walk()


class _Walker:
    """Collects moments path by path."""

    def __init__(self, ground: Ground, visits: tuple[Visit, ...]) -> None:
        self.ground = ground
        self.visits = visits
        self.moments: list[Moment] = []
        self.rests: list[Rest] = []
        self.ends: list[End] = []
        self.paths: list[str] = []
        self.after: list[State] = []
        self.lasting: dict[int, float] = {}
        self.clocked = [index for index, visit in enumerate(visits) if _looks_at_a_clock(visit.step)]

    def walk(self) -> Walk:
        state = self.straight()
        self.ends.append(End(state, "", len(self.moments) + 1))
        found = redos(self.visits)
        for redo in found:
            self.redo(redo, 1)
            if redo.most > 1:
                self.redo(redo, redo.most)
        if len(found) > 1:
            visits = all_once(self.visits, found, len(self.visits) * 4 + 50)
            self.follow(visits, self.start(), "after every check that can be redone failed once", 0)
        self.pauses()
        finished = len(self.moments) < MOST_MOMENTS
        return Walk(tuple(self.moments), tuple(self.rests), tuple(self.ends), tuple(self.paths), finished)

    def start(self) -> State:
        lab, part = self.ground.lab, self.ground.procedure.part
        draft = Draft(State({}, Clock(), {}), START)
        dress(self.ground, draft, tuple(map(str, lab.lab.base_wear)))
        if part:
            for residue in part.starts.residues:
                draft.put("residue", str(residue), True)
            draft.put("wet", "", "dripping" if part.starts.wet else None)
            if part.starts.at:
                draft.put("on", "", str(part.starts.at))
                place = lab.places.get(part.starts.at)
                draft.put("machine", str(part.starts.at), "held" if place and place.shared else None)
        return State(draft.atoms, Clock(), {})

    def straight(self) -> State:
        state = self.start()
        for visit in self.visits:
            state = self.advance(visit, state, "")
            self.after.append(state)
        return state

    def advance(self, visit: Visit, state: State, path: str) -> State:
        """A visit, and the pause behind it where that pause has a shortest time and so is always taken."""
        state = self.visit(visit, state, path)
        pause = visit.step.pause
        return self.rest(self.moments[-1], path) if pause and pause.time.low is not None else state

    def redo(self, redo: Redo, count: int) -> None:
        check = self.visits[redo.at].step.id
        path = f"after {check} failed {'once' if count == 1 else f'{count} times'}"
        again = ((redo.mend,) if redo.mend else ()) + self.visits[redo.to : redo.at + 1]
        self.follow(again * count, self.moments[redo.at].after, path, redo.at + 1)

    def pauses(self) -> None:
        for index, visit in enumerate(self.visits):
            pause = visit.step.pause
            if pause and pause.time.low is None:
                path = f"after a pause behind {visit.step.id}"
                self.follow((), self.rest(self.moments[index], path), path, index + 1)

    def follow(self, visits: Iterable[Visit], state: State, path: str, then: int) -> None:
        """Walk extra visits, then the straight run from visit `then` until nothing differs any more."""
        self.paths.append(path)
        for visit in visits:
            state = self.advance(visit, state, path)
        if then == 0:
            self.ends.append(End(state, path, len(self.moments) + 1))
            return
        for index in range(then, len(self.visits)):
            if self.joins(state, index):
                return
            state = self.advance(self.visits[index], state, path)
        self.ends.append(End(state, path, len(self.moments) + 1))

    def joins(self, state: State, index: int) -> bool:
        """Whether the path is the straight run again: same state, and no clock that still counts differs."""
        straight = self.after[index - 1]
        return state.same_as(straight) and not any(
            self.pending(self.visits[later].step, state, straight) for later in self.clocked if later >= index
        )

    def pending(self, step: Step, state: State, straight: State) -> bool:
        if step.do == "take-out" and _age(state, "entered", "") != _age(straight, "entered", ""):
            return True
        if step.since is None:
            return any(_age(state, "made", str(m)) != _age(straight, "made", str(m)) for m in step.use)
        id = str(step.since.step)
        return id in state.ended and _since(state, id) != _since(straight, id)

    def visit(self, visit: Visit, state: State, path: str) -> State:
        if len(self.moments) >= MOST_MOMENTS:
            return state
        step = visit.step
        draft = Draft(state, str(step.id))
        apply(self.ground, draft, step)
        time = self.seconds(step) * visit.times
        after = draft.done(state.clock.later(time, time))
        self.moments.append(
            Moment(step, visit.stage, state, after, path, len(self.moments) + 1, visit.times, visit.mends)
        )
        return after

    def seconds(self, step: Step) -> float:
        """What a step takes once; one that ends in a pause with a shortest time waits in that pause."""
        known = self.lasting.get(id(step))
        if known is None:
            paused = step.pause is not None and step.pause.time.low is not None
            known = self.ground.hands_on(step) + (0.0 if paused else self.ground.waiting(step))
            self.lasting[id(step)] = known
        return known

    def rest(self, moment: Moment, path: str) -> State:
        """Everything comes off, and the time of the pause goes by."""
        pause, state = moment.step.pause, moment.after
        assert pause is not None
        draft = Draft(state, str(moment.step.id))
        dress(self.ground, draft, tuple(map(str, self.ground.lab.lab.base_wear)))
        low = pause.time.low.si if pause.time.low else 0.0
        high = pause.time.high.si if pause.time.high else low
        resumed = State(draft.atoms, state.clock.later(low, high), state.ended)
        self.rests.append(Rest(moment._replace(path=path), resumed))
        return resumed


def _looks_at_a_clock(step: Step) -> bool:
    """Whether a step asks how long ago something was."""
    return step.do == "take-out" or step.since is not None or bool(step.use)


def _since(state: State, id: str) -> tuple[float, float]:
    ended = state.ended.get(id, Clock())
    return (round(state.clock.shortest - ended.shortest, 6), round(state.clock.longest - ended.longest, 6))


def _age(state: State, kind: str, name: str) -> object:
    made = state.value(kind, name)
    return round(state.clock.shortest - made.shortest, 6) if isinstance(made, Clock) else made
