"""A class's day: when each part starts, who has it, and what it needs when."""

from dataclasses import dataclass

from generator.units import Clock


@dataclass(frozen=True, slots=True)
class WorkView:
    """A piece of a part's day: what, at which place ("" for several), and whether it needs the hands."""

    start: Clock
    end: Clock
    what: str
    place: str
    hands: bool


@dataclass(frozen=True, slots=True)
class PartDayView:
    """One part: its name, its operator, when it starts and is done, and its pieces in order."""

    part: str
    operator: str
    start: Clock
    end: Clock
    work: tuple[WorkView, ...]


@dataclass(frozen=True, slots=True)
class DayPlanView:
    """All parts of a session in the order of their starts, `spacing` minutes apart (0 for one alone)."""

    procedure: str
    session: str
    spacing: int
    parts: tuple[PartDayView, ...]
