"""One finding about the author's text, as data."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from enum import StrEnum

from generator.problems.location import Location


class Level(StrEnum):
    """How grave: an error stops publishing, a warning needs a reason, a note is style."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"
    ACCEPTED = "accepted"


@dataclass(frozen=True, slots=True)
class Cause:
    """The first cause behind a problem: which piece of walked state, and the step that made it so."""

    atom: str
    since: str


MISSING = "missing "


def missing(kind: str, id: str, file: str) -> Cause:
    """The first cause behind everything that names a step, stage or card that a procedure's file has not."""
    return Cause(f"{MISSING}{kind}:{id}", file)


def misplaced(step: str) -> Cause:
    """The first cause behind whatever is found at a step that stands at the wrong place of the run."""
    return Cause("misplaced", step)


@dataclass(frozen=True, slots=True)
class Accepted:
    """Who lives with a warning, until when (ISO date), and why."""

    who: str
    until: str
    because: str


@dataclass(frozen=True, slots=True)
class Problem:
    """What was found and what was expected, in the trade's words, with a fix that is an action.

    `label` stands under the quoted line; `step` is the step's id where there is one; `place` the id of the
    place a problem stands on; `path` the redo or pause that leads to it; `follows` counts the problems folded
    under this one (those whose `causes` are among its causes, or among what it `explains`); `order` is when
    the walk met it.
    """

    rule: str
    level: Level
    where: Location
    message: str
    fix: str
    step: str = ""
    place: str = ""
    label: str = ""
    path: str = ""
    causes: tuple[Cause, ...] = ()
    explains: tuple[Cause, ...] = ()
    follows: int = 0
    accepted: Accepted | None = None
    order: int = field(default=0, compare=False)


_GRAVITY = {Level.ERROR: 0, Level.WARNING: 1, Level.ACCEPTED: 2, Level.NOTE: 3}


def by_place(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """The same problems without repeats, in the order of the author's files."""
    once = dict.fromkeys(problems)
    return tuple(sorted(once, key=lambda p: (p.where, _GRAVITY[p.level], p.rule, p.message)))
