"""What hangs on the walls, whether a card is current, and how a procedure stands."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.views.shown import BannerView, LinkView


@dataclass(frozen=True, slots=True)
class CopyView:
    """One laminated copy: card, issue, where it hangs, its state in words."""

    card: str
    pdf: str
    issue: str
    where: str
    state: str
    replace: bool = False


@dataclass(frozen=True, slots=True)
class TickView:
    """One copy to go to: where it hangs, its number in words, the line to type after."""

    where: str
    copy: str
    after: str


@dataclass(frozen=True, slots=True)
class TickGroupView:
    """Copies of one card that are alike: what to do with what hangs there, and what to hang up instead.

    `has` and `now` are issue and check code; `now` is empty where the copies only come down. `why` is what
    changed, `pdf` the card to print, "" for none.
    """

    title: str
    todo: str
    has: str
    rows: tuple[TickView, ...]
    now: str = ""
    why: tuple[str, ...] = ()
    pdf: str = ""


@dataclass(frozen=True, slots=True)
class CurrentCardView:
    """What is posted now for one card: the issue and check code to compare a copy with, and what changed.

    `procedure` and `card` are ids; `withdrawn` says since when and why. `changes` gives for each issue before
    this one, by its number, what changed since; `codes` the issue of each check code that it ever had. A card
    that is a draft has no issue.
    """

    procedure: str
    card: str
    title: str
    issue: str
    code: str
    pdf: str
    address: str
    withdrawn: str = ""
    changes: tuple[tuple[str, tuple[str, ...]], ...] = ()
    codes: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class PrintsView:
    """Files to print under one heading: for each its label, its path, and what it is for."""

    title: str
    files: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True)
class PostedView:
    """The pages cards/, cards/current/ and cards/replace/; `built` is the day of this copy of the site (ISO).

    `replace` are the copies that must come off the wall, `look` those that somebody should look at. `prints`
    are the files for the printer: those of the room, then those of each procedure.
    """

    copies: tuple[CopyView, ...]
    cards: tuple[CurrentCardView, ...]
    procedures: tuple[LinkView, ...] = ()
    built: str = ""
    room: str = ""
    day: str = ""
    replace: tuple[TickGroupView, ...] = ()
    look: tuple[TickGroupView, ...] = ()
    wrong: int = 0
    prints: tuple[PrintsView, ...] = ()


@dataclass(frozen=True, slots=True)
class ChangeView:
    """One change: its group and its line in the trade's words."""

    kind: str
    text: str


@dataclass(frozen=True, slots=True)
class IssueView:
    """One issue in the history: number, day, reason, who approved, what changed."""

    number: str
    posted: str
    reason: str
    approved: str
    changes: tuple[ChangeView, ...] = ()


@dataclass(frozen=True, slots=True)
class StandingView:
    """How a procedure stands: issue and day in words, its check code, marks on steps, its cards, its history.

    `marks` are by step, `cards` ("issue 3 · K7QMR") by card; all is empty for what was never posted.
    """

    issue: str = ""
    code: str = ""
    banners: tuple[BannerView, ...] = ()
    marks: Mapping[str, str] = field(default_factory=dict)
    cards: Mapping[str, str] = field(default_factory=dict)
    history: tuple[IssueView, ...] = ()
