"""What the lab's own pages say of one procedure: lists, places, chemicals, calculators and the report."""

from dataclasses import dataclass

from generator.views.index import RowView
from generator.views.report import WalkedView
from generator.views.shown import LinkView


@dataclass(frozen=True, slots=True)
class SeenView:
    """A symptom in a list, and the text that it is sorted by."""

    order: str
    row: RowView


@dataclass(frozen=True, slots=True)
class CountsView:
    """How much was walked: steps of the straight run, moments, paths; steps that change nothing or say no
    time; whether the walk came to its end."""

    straight: int
    moments: int
    paths: int
    acts: int
    untimed: int
    finished: bool


@dataclass(frozen=True, slots=True)
class ProcedureSummary:
    """One procedure, or the form of it that a class has.

    `row` is how a list names it, `posted_row` with its issue, `newest` what its issue changed (None without
    one), which may be its first. `places` are links to its first step by place; `chemicals` and `formulas`
    are names; `units` are (formula, input, unit) in the order of its sums; `steps` are (file, id).
    """

    id: str
    title: str
    who: str
    row: RowView
    posted_row: RowView
    newest: RowView | None
    is_first: bool
    places: tuple[tuple[str, LinkView], ...]
    codes: tuple[str, ...]
    symptoms: tuple[SeenView, ...]
    chemicals: tuple[str, ...]
    formulas: tuple[str, ...]
    units: tuple[tuple[str, str, str], ...]
    steps: tuple[tuple[str, str], ...]
    walked: WalkedView
    counts: CountsView
