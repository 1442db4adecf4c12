"""The register of laminated copies: which hang where, which are wrong now, which nobody has looked at."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any, Literal

from generator.model.posted import CopyRegister, LaminatedCopy
from generator.notation import as_yaml
from generator.posting.plain import plain_noun
from generator.posting.shelf import Shelf
from generator.units import UNITS, Quantity, write_quantity

State = Literal["current", "replace", "withdrawn", "not posted"]
_OPENING = "# Every laminated copy and where it hangs; `newel copies` keeps this list.\n"


@dataclass(frozen=True, slots=True)
class Hanging:
    """A copy with its state: `issue` and `code` are those of the card as posted now, "" where it is not."""

    copy: LaminatedCopy
    state: State
    issue: str = ""
    code: str = ""
    look_due: datetime.date | None = None

    @property
    def is_wrong(self) -> bool:
        """Whether it must come off the wall."""
        return self.state != "current"

    @property
    def name(self) -> str:
        """Card and number, as a person says them."""
        return f"{self.copy.card} copy {self.copy.copy_}"


def hanging(shelf: Shelf, today: datetime.date) -> tuple[Hanging, ...]:
    """Every copy of the register with its state today."""
    return tuple(_hanging(shelf, copy, today) for copy in shelf.register.copies)


def _hanging(shelf: Shelf, copy: LaminatedCopy, today: datetime.date) -> Hanging:
    found = posted_card(shelf, str(copy.card))
    due = _due(shelf.register, copy)
    late = due if due and due < today else None
    if found is None:
        return Hanging(copy, "not posted", look_due=late)
    issue, code = found
    if shelf.withdrawn(procedure_of(str(copy.card))):
        return Hanging(copy, "withdrawn", issue, code, late)
    return Hanging(copy, "current" if copy.code == code else "replace", issue, code, late)


def _due(register: CopyRegister, copy: LaminatedCopy) -> datetime.date | None:
    if register.look_every is None:
        return None
    seen = copy.looked_at or copy.since
    return seen + datetime.timedelta(seconds=register.look_every.si)


def procedure_of(card: str) -> str:
    """The procedure that a card's name starts with, without its class."""
    return card.partition("/")[0].partition(".")[0]


def posted_card(shelf: Shelf, card: str) -> tuple[str, str] | None:
    """Issue and check code of a card (`procedure/card`, `procedure.class/card`) as posted now."""
    head = shelf.head(procedure_of(card))
    home, _, name = card.partition("/")
    tail = home.partition(".")[2]
    found = head.cards.get(f"{tail}/{name}" if tail else name) if head else None
    return (str(found.issue), str(found.code)) if found else None


def posted_names(shelf: Shelf) -> tuple[str, ...]:
    """The names of all cards that are posted now, as copies have them."""
    heads = ((id, shelf.head(id)) for id in shelf.issues)
    return tuple(_full_name(id, str(name)) for id, head in heads if head for name in head.cards)


def _full_name(id: str, name: str) -> str:
    """`second-year/etch` of `line` is `line.second-year/etch`."""
    tail, _, card = name.rpartition("/")
    return f"{id}.{tail}/{card}" if tail else f"{id}/{card}"


def add_copy(register: CopyRegister, new: LaminatedCopy) -> CopyRegister:
    """The register with one copy more, numbered behind the others of its card."""
    taken = [copy.copy_ for copy in register.copies if copy.card == new.card]
    numbered = new.model_copy(update={"copy_": max(taken, default=0) + 1})
    return register.model_copy(update={"copies": (*register.copies, numbered)})


def change_copy(
    register: CopyRegister, card: str, number: int, fields: dict[str, Any]
) -> CopyRegister | None:
    """The register with fields of one copy changed; None where there is no such copy."""
    if not any(_is(copy, card, number) for copy in register.copies):
        return None
    copies = tuple(
        copy.model_copy(update=fields) if _is(copy, card, number) else copy for copy in register.copies
    )
    return register.model_copy(update={"copies": copies})


def drop_copy(register: CopyRegister, card: str, number: int) -> CopyRegister | None:
    """The register without one copy; None where there is no such copy."""
    copies = tuple(copy for copy in register.copies if not _is(copy, card, number))
    return None if len(copies) == len(register.copies) else register.model_copy(update={"copies": copies})


def _is(copy: LaminatedCopy, card: str, number: int) -> bool:
    return copy.card == card and copy.copy_ == number


def write_register(register: CopyRegister) -> str:
    """The text of copies.yml."""
    plain = plain_noun(register)
    if register.look_every is not None:
        plain["look_every"] = _said(register.look_every)
    return _OPENING + as_yaml(plain)


def _said(span: Quantity) -> str:
    """ "1 day", "30 days"; in this file alone, for issues are sealed over the plain spelling of units."""
    unit = UNITS[span.unit]
    return f"{write_quantity(span).removesuffix(span.unit)}{unit.symbol if span.number == 1 else unit.plural}"


def wrong_copies(shelf: Shelf, today: datetime.date) -> Iterator[Hanging]:
    """The replace list."""
    return (one for one in hanging(shelf, today) if one.is_wrong)
