"""A class's day: when each part starts, who has it, what it needs when, and which places are busy."""

from dataclasses import dataclass
from typing import Literal

from generator.units import Clock

BarKind = Literal["hands", "wait", "busy"]


@dataclass(frozen=True, slots=True)
class WorkView:
    """A piece of a part's day: what, at which place ("" for several), and whether it needs the hands."""

    start: Clock
    end: Clock
    what: str
    place: str
    hands: bool


@dataclass(frozen=True, slots=True)
class BarView:
    """From when to when, in minutes after midnight, what is drawn in it, and what it shows."""

    start: float
    end: float
    text: str
    kind: BarKind


@dataclass(frozen=True, slots=True)
class LaneView:
    """One line of a chart: its label and its bars in order."""

    label: str
    bars: tuple[BarView, ...]


@dataclass(frozen=True, slots=True)
class PartDayView:
    """One part: its name, its operator, when it starts and is done, and its pieces in order.

    `free` says when nothing is to be done with it for a while; `lane` is the same day as a line of a chart.
    """

    part: str
    operator: str
    start: Clock
    end: Clock
    work: tuple[WorkView, ...]
    free: tuple[str, ...]
    lane: LaneView


@dataclass(frozen=True, slots=True)
class AskedView:
    """Somebody who has to come: when, which role, for which part, and until what."""

    at: Clock
    role: str
    part: str
    until: str


@dataclass(frozen=True, slots=True)
class DayPlanView:
    """All parts of a session in the order of their starts, `spacing` minutes apart (0 for one alone).

    `start`, `pack_up` and `end` are the session's; a part that starts after `last_start` is not done in time.
    `takes` is how long one part takes, `more` that the session holds more parts than are planned.
    `sitting` says which piece of a longer run this is, `stop` behind which step it ends.
    `latest` are stages that cannot be left half-way, each with the latest moment to begin. `places` are the
    places in use with the parts that are in them, `hands` the operators who have more than one part.
    """

    procedure: str
    session: str
    spacing: int
    parts: tuple[PartDayView, ...]
    start: Clock
    pack_up: Clock
    end: Clock
    last_start: Clock
    takes: str
    more: bool
    bottleneck: str
    asked: tuple[AskedView, ...]
    latest: tuple[tuple[str, str], ...]
    places: tuple[LaneView, ...]
    hands: tuple[LaneView, ...]
    sitting: str = ""
    stop: str = ""
