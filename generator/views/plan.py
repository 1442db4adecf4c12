"""The session clock and the numbers of a student's own part, as data for the page and its script."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class SessionView:
    """A session of the lab: name, and its beginning and end in minutes after midnight."""

    name: str
    start: int
    end: int
    shown: str


@dataclass(frozen=True, slots=True)
class PlanStepView:
    """A step on the clock: its minutes, the attention it asks for (here, near, away), its sum if it has one.

    `pause` says how the part is kept when work may stop after this step. `point` names what cannot be undone
    from here on, for the latest moment to enter it.
    """

    id: str
    minutes: float
    attention: str = "here"
    sum: str = ""
    pause: str = ""
    point: str = ""


@dataclass(frozen=True, slots=True)
class PlanView:
    """All that the session clock needs; `pack_up` in minutes; the shown texts stand where no script runs."""

    sessions: tuple[SessionView, ...]
    pack_up: int
    steps: tuple[PlanStepView, ...]
    total_shown: str
    hands_on_shown: str
    rows: tuple[tuple[str, str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class UnitView:
    """A unit beside a box: as typed, as shown, and the way to SI: (number + offset) x factor."""

    symbol: str
    shown: str
    factor: float
    offset: float = 0.0


@dataclass(frozen=True, slots=True)
class BoxView:
    """One input: name in the formula, label, symbol, number as shown in the first unit, units, ranges in
    words.

    `low` and `high` are the hard range in SI (None where there is none), `usual_low` and `usual_high` the
    usual one. `columns` make it a list of rows, each row one number for each column.
    """

    name: str
    label: str
    symbol: str
    number: str
    units: tuple[UnitView, ...] = ()
    usual: str = ""
    hard: str = ""
    low: float | None = None
    high: float | None = None
    usual_low: float | None = None
    usual_high: float | None = None
    columns: tuple["BoxView", ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
    choices: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class SumView:
    """A value worked out on the page, inner ones first.

    `sources` gives for each input of the formula "box:NAME", "sum:KEY" or a value in SI as text.
    """

    key: str
    formula: str
    title: str
    shown: str
    unit: UnitView
    digits: int
    sources: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class JobView:
    """The numbers of the part: boxes with the class's values, and the sums that follow from them."""

    boxes: tuple[BoxView, ...]
    sums: tuple[SumView, ...]
    note: str = ""
