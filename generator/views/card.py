"""The finished data of one wall card: every text ready to print, nothing left to decide."""

from dataclasses import dataclass, field
from typing import Literal

from generator.views.card_words import ENGLISH, CardWords

Status = Literal["draft", "posted", "withdrawn"]
Orientation = Literal["portrait", "landscape", "either"]
MarkKind = Literal["dry", "wet", "last-mains", "hands", "near", "away", "current-first"]


@dataclass(frozen=True, slots=True)
class CardWear:
    """One piece to wear: the number of its mandatory sign in ISO 7010 ("M009", or "") and its title."""

    symbol: str
    title: str


@dataclass(frozen=True, slots=True)
class CardHelp:
    """One line of help: a bold label in capitals ("CALL") and who or where ("Duty technician: room B12")."""

    label: str
    text: str


@dataclass(frozen=True, slots=True)
class CardHazard:
    """One hazard of the card's steps: the number of its warning sign ("W023", or "") and its words."""

    symbol: str
    text: str


@dataclass(frozen=True, slots=True)
class CardMark:
    """A state that must not be missed at a step; the shape follows `kind`, the words are always printed."""

    kind: MarkKind
    text: str


@dataclass(frozen=True, slots=True)
class CardStep:
    """One row: one action. Every text is finished; an empty text prints nothing.

    `sentence` is the step's `card`, or else its `say`. `place_number` is "" for a place without a number,
    `place_title` "" for a step without a place. `check` is what must be seen, `if_not` the whole sentence
    for when it is not, `call` the role with its reach. `hold` says who and until what; `alarm` what to do
    first when the timer sounds; `setting` what is set;
    `container` where the waste goes. `amounts` is what is used and how much, and `amount_shown` the one
    amount set in large figures where no time takes that room; `target` what it goes into, `repeat` how
    often or for how many; `on` and `off` what is put on and taken off; `rack` what carries the part, `rock`
    how often it is shaken; `extraction` what must be drawing at the place; `book` where a shared machine is
    booked; `before` what is looked at before a machine is started or a door opened, `watch` what is looked
    at again and again, each with its own sentence for when it is not so; `limit` a time up to which, and
    `not_before` one from which, the step may be done; `who` whose step it is where that is another role;
    `pause` how the part is kept where work may stop.
    """

    id: str
    number: str
    verb: str
    sentence: str
    stage: str = ""
    stage_title: str = ""
    place_number: str = ""
    place_title: str = ""
    dwell_shown: str = ""
    window_shown: str = ""
    marks: tuple[CardMark, ...] = ()
    setting: str = ""
    who: str = ""
    amount_shown: str = ""
    amounts: str = ""
    target: str = ""
    repeat: str = ""
    on: str = ""
    off: str = ""
    extraction: str = ""
    rack: str = ""
    rock: str = ""
    book: str = ""
    before: str = ""
    before_if_not: str = ""
    limit: str = ""
    not_before: str = ""
    hold: str = ""
    alarm: str = ""
    watch: str = ""
    watch_if_not: str = ""
    check: str = ""
    if_not: str = ""
    call: str = ""
    container: str = ""
    pause: str = ""


@dataclass(frozen=True, slots=True)
class CardTable:
    """A ready-reckoner: title, column heads with their units, rows of finished values, one note.

    `step` is the id of the step that it belongs to, "" for a table of the whole card.
    """

    title: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    note: str = ""
    step: str = ""


@dataclass(frozen=True, slots=True)
class CardView:
    """One card for one work position.

    `read_from` is the reading distance in mm. `size` is one of A4, A3, Letter, Tabloid. `dated` is the ISO
    date of the document (of the issue, or of the draft). `address` is what the QR code holds,
    `address_shown` how it is printed. `language` is a BCP 47 tag. A visitor's card has no steps.
    `withdrawn` says since when and why, for a card whose status is withdrawn.
    """

    card: str
    procedure: str
    title: str
    language: str
    size: str
    read_from: float
    dated: str
    address: str
    caution: str
    procedure_title: str = ""
    lab_title: str = ""
    orientation: Orientation = "either"
    status: Status = "draft"
    issue: str = ""
    check_code: str = ""
    good_until: str = ""
    address_shown: str = ""
    stations: tuple[str, ...] = ()
    wear: tuple[CardWear, ...] = ()
    stop_rule: str = ""
    help: tuple[CardHelp, ...] = ()
    signal: str = ""
    hazards: tuple[CardHazard, ...] = ()
    steps: tuple[CardStep, ...] = ()
    tables: tuple[CardTable, ...] = ()
    withdrawn: str = ""
    words: CardWords = field(default=ENGLISH)
