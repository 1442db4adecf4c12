"""The session clock and the numbers of a student's own part, as data for the page and its script."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

BoxKind = Literal["quantity", "rows", "sizes", "choice"]


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

    `hands_on` are the minutes beside a time that a sum gives. `pause` says how the part is kept when work may
    stop after this step (`must`: has to). `point` names what cannot be left half-way from here on, for the
    latest moment to enter it. `number` is the step's on the page.
    """

    id: str
    minutes: float
    attention: str = "here"
    sum: str = ""
    hands_on: float = 0.0
    pause: str = ""
    point: str = ""
    must: bool = False
    number: str = ""


@dataclass(frozen=True, slots=True)
class SeveralView:
    """Several parts through shared places: labelled sentences, and what fits each session by operators.

    `rows` are a session's name and a text for each of `operators`; `note` says what the numbers leave out.
    """

    facts: tuple[tuple[str, str], ...]
    operators: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str


@dataclass(frozen=True, slots=True)
class PlanView:
    """All that the session clock needs; `pack_up` in minutes; the shown texts stand where no script runs.

    `latest` has a row for each stage that cannot be left half-way: its title, and a text for each session.
    """

    sessions: tuple[SessionView, ...]
    pack_up: int
    steps: tuple[PlanStepView, ...]
    total_shown: str
    hands_on_shown: str
    rows: tuple[tuple[str, str, str], ...] = ()
    latest: tuple[tuple[str, ...], ...] = ()
    several: SeveralView | None = None


@dataclass(frozen=True, slots=True)
class UnitView:
    """A unit as typed and as shown; in SI a number is (number + offset) x numerator / denominator.

    `spellings` are what people type besides the symbol.
    """

    symbol: str
    shown: str
    numerator: float = 1.0
    denominator: float = 1.0
    offset: float = 0.0
    spellings: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class FenceView:
    """Between what a number must stay, in SI, and what is said where it does not."""

    low: float | None
    high: float | None
    says: str


@dataclass(frozen=True, slots=True)
class ChoiceView:
    """One row of a table of constants (a metal): its name, title, and constants in SI."""

    name: str
    title: str
    constants: Mapping[str, float]


@dataclass(frozen=True, slots=True)
class BoxView:
    """One input of a formula: its name there, what it is, how it is typed, and what is allowed.

    `number` is shown in the first of `units`. `low`, `high` are the hard range in SI, `usual_low` and
    `usual_high` the usual one, None where there is none; `hard` and `usual` say them in words, `because`
    why; `never` is the lab's own limit in SI and in words. `clock` is a time of day. `kind` is quantity,
    rows (a number for each of `columns` in each of `rows`), sizes (a list of numbers in `number`, parted by
    spaces) or choice (one of `choices`, chosen by name in `number`). `fences` are the limits of a procedure.
    """

    name: str
    label: str
    symbol: str
    number: str = ""
    kind: BoxKind = "quantity"
    units: tuple[UnitView, ...] = ()
    whole: bool = False
    usual: str = ""
    hard: str = ""
    because: str = ""
    low: float | None = None
    high: float | None = None
    usual_low: float | None = None
    usual_high: float | None = None
    never: float | None = None
    never_shown: str = ""
    clock: bool = False
    fences: tuple[FenceView, ...] = ()
    columns: tuple["BoxView", ...] = ()
    rows: tuple[tuple[str, ...], ...] = ()
    choices: tuple[ChoiceView, ...] = ()


@dataclass(frozen=True, slots=True)
class SumView:
    """A value worked out on the page, inner ones first.

    `sources` says for each input of the formula where it is from: "box:NAME", "sum:KEY", or "" for a value
    that the page holds in `constants` (a number, rows, sizes or a record, all in SI). `toward` is how the
    last of the `decimals` is rounded: nearest, up, down; from `whole_from` on (0 for never) whole numbers are
    shown. `requires` is said where numbers do not fit, `fences` where the answer is not for here.
    A lab's own formula counts in the units of `takes` (by input, or input.column) and answers in `gives`.
    """

    key: str
    formula: str
    title: str
    shown: str
    unit: UnitView
    decimals: int
    sources: tuple[tuple[str, str], ...]
    constants: Mapping[str, object] = field(default_factory=dict)
    toward: str = "nearest"
    requires: tuple[str, ...] = ()
    takes: Mapping[str, UnitView] = field(default_factory=dict)
    gives: UnitView | None = None
    whole_from: float = 0.0
    fences: tuple[FenceView, ...] = ()


@dataclass(frozen=True, slots=True)
class JobView:
    """The numbers of the part: boxes with the class's values, and the sums that follow from them."""

    boxes: tuple[BoxView, ...]
    sums: tuple[SumView, ...]
    note: str = ""
