"""The finished data of a sheet for the hand: run sheet, check-off list, day plan, cover list."""

from dataclasses import dataclass, field

from generator.views.card import Status
from generator.views.card_words import ENGLISH, CardWords
from generator.views.day_plan import LaneView


@dataclass(frozen=True, slots=True)
class PaperCell:
    """A cell: `lead` in bold, then `text`; both empty is a blank to write in; `tick` draws a box to tick."""

    text: str = ""
    lead: str = ""
    tick: bool = False


BLANK = PaperCell()
TICK = PaperCell(tick=True)


@dataclass(frozen=True, slots=True)
class PaperTable:
    """A form: title, heads, the share of the width that each column takes, rows of cells, one note."""

    title: str
    heads: tuple[str, ...]
    shares: tuple[float, ...]
    rows: tuple[tuple[PaperCell, ...], ...]
    note: str = ""


@dataclass(frozen=True, slots=True)
class PaperBlanks:
    """Lines to write on, side by side, each under its label; one that is filled in already has a text."""

    labels: tuple[str, ...]
    texts: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class PaperWords:
    """A paragraph: `lead` in bold, then `text`."""

    text: str
    lead: str = ""


@dataclass(frozen=True, slots=True)
class PaperLines:
    """A chart of a day: lanes over one clock from `start` to `end` minutes after midnight.

    `ends` are moments drawn through all lanes, each with its words. A table beside it says the same in words.
    """

    title: str
    start: int
    end: int
    lanes: tuple[LaneView, ...]
    ends: tuple[tuple[int, str], ...] = ()
    note: str = ""


CAUTION = (
    "The supplier's safety data sheet, the safety office, local codes and licensed practice stand above this"
    " sheet."
)
PaperPart = PaperTable | PaperBlanks | PaperWords | PaperLines


@dataclass(frozen=True, slots=True)
class PaperView:
    """One document of a page or two, read at the length of an arm.

    `about` says where it belongs, `identity` which issue it is; `dated` is an ISO date; `address` what the QR
    code holds, "" for none; `turned` lays the sheet across; `letters` are the
    largest capitals in mm; `most_pages` is how many pages the letters are made smaller for, down to the
    least that a reader at arm's length needs.
    """

    id: str
    title: str
    dated: str
    about: str = ""
    identity: str = ""
    language: str = "en"
    size: str = "A4"
    turned: bool = False
    letters: float = 2.6
    status: Status = "draft"
    address: str = ""
    address_shown: str = ""
    caution: str = CAUTION
    parts: tuple[PaperPart, ...] = ()
    most_pages: int = 2
    words: CardWords = field(default=ENGLISH)
