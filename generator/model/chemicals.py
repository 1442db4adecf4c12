"""Substances as bought, and mixtures made here."""

import re
from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from generator.model.located import Located, Text
from generator.model.reader import Reader
from generator.model.scalars import (
    Amount,
    Count,
    Day,
    Density,
    Flag,
    Listed,
    Named,
    Ph,
    Ref,
    Refs,
    Sentence,
    Span,
    Viscosity,
    Volume,
    refuse,
    text,
    units_reader,
)
from generator.units import Quantity, read_quantity


@dataclass(frozen=True, slots=True)
class Portion:
    """How much of an ingredient: the rest, or an amount with the species that it counts ("as H2SO4")."""

    amount: Quantity | None
    counted_as: str = ""

    @property
    def rest(self) -> bool:
        """Whether this ingredient fills up what is left."""
        return self.amount is None


_AS = re.compile(r"(?P<amount>.+?)\s+as\s+(?P<species>\w[\w ()+.-]*)")


def read_portion(value: object) -> Portion:
    """`15 g/L`, `18 g/L as H2SO4`, `6 % v/v`, `100 parts` or `rest`."""
    words = text(value)
    if words == "rest":
        return Portion(None)
    tail = _AS.fullmatch(words)
    amount = units_reader(read_quantity)(Text(tail["amount"]) if tail else words)
    return Portion(amount, tail["species"] if tail else "")


def read_cas(value: object) -> Text:
    """Digits in three groups; the check digit is judged by the rule `cas-digit`."""
    words = text(value)
    if not re.fullmatch(r"\d{2,7}-\d{2}-\d", words):
        raise refuse("cas-digit", f'"{words}" has not the form of a CAS number', "write it as 7664-93-9")
    return words


class Kept(Located):
    """How much is kept, and in which cupboard."""

    amount: Amount | None = None
    cupboard: Sentence | None = Field(default=None, alias="where")


class Sheet(Located):
    """The supplier's safety data sheet: where the lab holds it, and its date."""

    held_at: Sentence | None = None
    dated: Day | None = None


class Substance(Located):
    """A substance or mixture as bought, with the statements of the supplier's sheet."""

    title: Sentence
    cas: Annotated[Text, Reader(read_cas)] | None = None
    mixture: Flag = False
    strength: Amount | None = None
    density: Density | None = None
    hazards: Refs = ()
    not_classified: Flag = False
    groups: Refs = ()
    chart_groups: Annotated[tuple[Count, ...], Listed] | None = None
    needs_extraction: Flag = False
    kept: Kept | None = None
    sheet: Sheet | None = None


class Mixture(Located):
    """A bath or a batch made in this lab."""

    title: Sentence
    made_of: Annotated[dict[Ref, Annotated[Portion, Reader(read_portion)]], Named] = {}
    volume: Volume | None = None
    density: Density | None = None
    ph: Ph | None = None
    viscosity: Viscosity | None = None
    hazards: Refs = ()
    not_classified: Flag = False
    wear: Refs = ()
    use_within: Span | None = None
    renew: Sentence | None = None
    if_contaminated: Sentence | None = None
    leftovers: Ref | None = None
    cost_to_replace: Sentence | None = None


class SmallAmount(Located):
    """The amount below which a row does not count, which role decided it, when and why."""

    below: Amount
    decided_by: Ref
    decided: Day | None = None
    because: Sentence


class KeepApart(Located):
    """Groups that never meet in one bath, tray or container."""

    groups: Refs
    because: Sentence
    small: SmallAmount | None = None
