"""One step as the student's page shows it; every text is finished."""

from dataclasses import dataclass
from typing import NamedTuple

from generator.views.shown import (
    BadgeView,
    FactView,
    LinkView,
    PictureView,
    SignView,
    SourceView,
    StationView,
)


@dataclass(frozen=True, slots=True)
class TimeView:
    """The time of a step: shown large, its window small, and what sounds.

    `seconds` runs the timer of the page; 0 means no timer. `first` is what to do first when it sounds.
    `sum` names the sum it comes from ("" for a typed time), so that the page can follow a student's own part.
    `low` and `high` are the window in seconds, 0 where it is open.
    """

    shown: str
    window: str = ""
    seconds: float = 0.0
    timer: str = ""
    first: str = ""
    sum: str = ""
    low: float = 0.0
    high: float = 0.0


@dataclass(frozen=True, slots=True)
class FailView:
    """What follows when a check is not met: words, a mending step, the step to go back to, whom to call."""

    say: str = ""
    mend: str = ""
    redo: LinkView | None = None
    at_most: str = ""
    call: str = ""


@dataclass(frozen=True, slots=True)
class RecordView:
    """One thing to write down: label, unit or limit in words."""

    key: str
    label: str
    unit: str = ""
    limit: str = ""


@dataclass(frozen=True, slots=True)
class QuestionView:
    """A self-check question with its answer."""

    question: str
    answer: str


@dataclass(frozen=True, slots=True)
class SettingView:
    """What is set or switched on: label, value, and the sum that the value comes from, if any."""

    label: str
    shown: str
    sum: str = ""


class StepView(NamedTuple):
    """One action; an empty text or tuple shows nothing.

    `look` is what a place asks for whenever it is opened, `look_fail` what follows if it is not so; `since`
    is a time counted from another step, `hold` whom to wait for and until what; `uses` are substances and
    mixtures. `stay` is "" for staying beside it; `changed` says in which issue it changed, if it did;
    `source` is where the step is written.
    """

    id: str
    number: str
    verb: str
    sentence: str
    station: StationView | None = None
    time: TimeView | None = None
    takes: str = ""
    stay: str = ""
    wear: tuple[SignView, ...] = ()
    hazards: tuple[SignView, ...] = ()
    settings: tuple[SettingView, ...] = ()
    lines: tuple[FactView, ...] = ()
    look: str = ""
    look_fail: FailView | None = None
    check: str = ""
    fail: FailView | None = None
    watch: str = ""
    watch_fail: FailView | None = None
    hold: str = ""
    since: str = ""
    record: tuple[RecordView, ...] = ()
    repeat: str = ""
    waste: FactView | None = None
    pause: str = ""
    badges: tuple[BadgeView, ...] = ()
    picture: PictureView | None = None
    why: str = ""
    questions: tuple[QuestionView, ...] = ()
    formulas: tuple[LinkView, ...] = ()
    changed: str = ""
    source: SourceView | None = None
