"""What the walk believes at one moment: pieces of state, each with its step, and the clock."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from generator.problems import Cause

START = "start"
Atoms = Mapping[str, Mapping[str, "Atom"]]


class Atom(NamedTuple):
    """One piece of state: its value, and the id of the step (or `start`) since when it holds."""

    value: object
    since: str


_NONE = Atom(None, START)
_NOTHING: Mapping[str, Atom] = {}


class Clock(NamedTuple):
    """Seconds since the start, at the shortest and at the longest (a pause may take from a while to days)."""

    shortest: float = 0.0
    longest: float = 0.0

    def later(self, shortest: float, longest: float) -> "Clock":
        """The clock after at least `shortest` and at most `longest` seconds more."""
        return Clock(self.shortest + shortest, self.longest + longest)


class State(NamedTuple):
    """Atoms by kind, then by name; `ended` is the clock at the end of the last run of each step.

    Kinds: in (place the part is in), on (machine it sits on), wet, residue, rack, hot, seen, worn, hands
    (gloves in the order of putting on), glove (places touched), open, live, heated, tray, machine, saved,
    looked, made (mixture), entered (clock when the part went in).
    """

    atoms: Atoms
    clock: Clock
    ended: Mapping[str, Clock]

    def atom(self, kind: str, name: str = "") -> Atom:
        """The atom of a kind and name; one without value since the start where nothing is known."""
        return self.atoms.get(kind, _NOTHING).get(name, _NONE)

    def value(self, kind: str, name: str = "") -> object:
        """The value of an atom, None where there is none."""
        return self.atoms.get(kind, _NOTHING).get(name, _NONE).value

    def text(self, kind: str, name: str = "") -> str:
        """A value that is an id, empty where there is none."""
        value = self.atoms.get(kind, _NOTHING).get(name, _NONE).value
        return value if isinstance(value, str) else ""

    def has(self, kind: str, name: str = "") -> bool:
        """Whether an atom has a value that is not empty."""
        return bool(self.atoms.get(kind, _NOTHING).get(name, _NONE).value)

    def names(self, kind: str) -> Iterator[str]:
        """The names of all atoms of a kind that have a value."""
        return (name for name, atom in self.atoms.get(kind, _NOTHING).items() if atom.value)

    def made_by(self, step: str) -> Iterator[Cause]:
        """All that a step made so."""
        for kind, named in self.atoms.items():
            for name, atom in named.items():
                if atom.since == step:
                    yield Cause(f"{kind}:{name}", step)

    def cause(self, kind: str, name: str = "") -> Cause:
        """The first cause that this atom is for a problem."""
        return Cause(f"{kind}:{name}", self.atom(kind, name).since)

    def gloves(self) -> tuple[str, ...]:
        """What is worn on the hands, innermost first."""
        value = self.atoms.get("hands", _NOTHING).get("", _NONE).value
        return value if isinstance(value, tuple) else ()

    def touched(self, glove: str) -> frozenset[str]:
        """The places that a glove has touched since it was put on."""
        value = self.atoms.get("glove", _NOTHING).get(glove, _NONE).value
        return value if isinstance(value, frozenset) else frozenset()

    def same_as(self, other: "State") -> bool:
        """Whether two moments differ in nothing but the clock and since when things hold."""
        mine, theirs = self.atoms, other.atoms
        for kind in mine.keys() | theirs.keys():
            one, two = mine.get(kind, _NOTHING), theirs.get(kind, _NOTHING)
            if one is not two and not _same(kind in ("entered", "made"), one, two):
                return False
        return True


def _same(clocks: bool, one: Mapping[str, Atom], other: Mapping[str, Atom]) -> bool:
    """Clock times count only as being there; how long ago is compared by whoever needs it."""
    for name in one.keys() | other.keys():
        mine, theirs = one.get(name, _NONE).value, other.get(name, _NONE).value
        if mine != theirs and not (clocks and mine and theirs):
            return False
    return True


class Draft:
    """A state being changed by one step; only the kinds that change are copied."""

    __slots__ = ("_now", "atoms", "state", "step")

    def __init__(self, state: State, step: str) -> None:
        self.state = state
        self.step = step
        self.atoms: dict[str, Mapping[str, Atom]] = dict(state.atoms)
        self._now = State(self.atoms, state.clock, state.ended)

    def put(self, kind: str, name: str, value: object) -> None:
        """Set an atom; its `since` moves only when the value changes."""
        named = self.atoms.get(kind, _NOTHING)
        if named.get(name, _NONE).value != value:
            self.atoms[kind] = {**named, name: Atom(value, self.step)}

    def renew(self, kind: str, name: str, value: object) -> None:
        """Set an atom and its `since`, whatever it was before."""
        self.atoms[kind] = {**self.atoms.get(kind, _NOTHING), name: Atom(value, self.step)}

    def keep(self, kind: str, name: str, atom: Atom) -> None:
        """Set an atom as it is given."""
        self.atoms[kind] = {**self.atoms.get(kind, _NOTHING), name: atom}

    def now(self) -> State:
        """The draft as a state at the old clock, for look-ups while it changes: it changes with the draft."""
        return self._now

    def done(self, clock: Clock) -> State:
        """The state after the step."""
        return State(self.atoms, clock, {**self.state.ended, self.step: clock})
