"""The run as a strip: time across, one band for each thing that the walk carries."""

from dataclasses import dataclass
from typing import Literal, NamedTuple

BandKind = Literal["attention", "place", "wet", "worn", "open", "live", "held", "limit"]


class VisitView(NamedTuple):
    """A step as it is come to: number, sentence, and the minutes at which it begins and ends."""

    id: str
    number: str
    say: str
    start: float
    end: float


class SpanView(NamedTuple):
    """A piece of a lane, from and to a position: 12.5 is half-way through the thirteenth visit.

    `kind` chooses tone and pattern, `text` stands on it where it fits, `said` is said in the table.
    """

    start: float
    end: float
    kind: str
    text: str = ""
    said: str = ""


@dataclass(frozen=True, slots=True)
class LaneView:
    """One line of a band; `name` stands over it."""

    name: str
    spans: tuple[SpanView, ...]


@dataclass(frozen=True, slots=True)
class BandView:
    """What is followed: its kind, its name as the head of a column, its lanes."""

    kind: BandKind
    name: str
    lanes: tuple[LaneView, ...]


@dataclass(frozen=True, slots=True)
class PauseMarkView:
    """Where work may stop (`must` where it has to), behind which visit, and for how long in words."""

    behind: int
    must: bool
    text: str


@dataclass(frozen=True, slots=True)
class StripView:
    """The whole strip: a title, all of it in a few sentences, stages and bands over the visits, pauses.

    `procedure` is the id; `rows` say the same in words, a cell for each of `columns`, one row a visit.
    """

    procedure: str
    title: str
    said: str
    visits: tuple[VisitView, ...]
    stages: tuple[SpanView, ...]
    bands: tuple[BandView, ...]
    pauses: tuple[PauseMarkView, ...]
    columns: tuple[str, ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
