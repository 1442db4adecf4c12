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
    """How much is kept."""
    cupboard: Sentence | None = Field(default=None, alias="where")
    """In which cupboard or store; what shares one is looked at together."""


class Sheet(Located):
    """The supplier's safety data sheet: where the lab holds it, and its date."""

    held_at: Sentence | None = None
    """Where the sheet is found."""
    dated: Day | None = None
    """The date on the sheet."""


class Substance(Located):
    """A substance or mixture as bought, with the statements of the supplier's sheet."""

    title: Sentence
    """The name as on the bottle."""
    cas: Annotated[Text, Reader(read_cas)] | None = None
    """Its CAS number; its last digit is checked."""
    mixture: Flag = False
    """It is bought as a mixture and so has no CAS number."""
    strength: Amount | None = None
    """How much of it is the substance, as bought."""
    density: Density | None = None
    """Its density as bought; turns amounts by volume into amounts by weight."""
    hazards: Refs = ()
    """H statements copied from the supplier's current sheet, and hazard words."""
    not_classified: Flag = False
    """The sheet says that there is nothing to declare; an empty list alone does not."""
    groups: Refs = ()
    """The lab's own words for what must be kept apart, such as acid or oxidiser."""
    chart_groups: Annotated[tuple[Count, ...], Listed] | None = None
    """Its groups on the EPA reactivity chart, by number; without it the CAS number decides."""
    needs_extraction: Flag = False
    """It is used only where the air is drawn off."""
    kept: Kept | None = None
    """How much is kept, and where."""
    sheet: Sheet | None = None
    """Where the supplier's sheet is held, and of what day it is."""


class Mixture(Located):
    """A bath or a batch made in this lab."""

    title: Sentence
    """The bath or batch as pages and labels print it."""
    made_of: Annotated[dict[Ref, Annotated[Portion, Reader(read_portion)]], Named] = {}
    """What goes into it, each with an amount, or `rest`."""
    volume: Volume | None = None
    """How much of it there is."""
    density: Density | None = None
    """Its density; turns g/L into shares by weight."""
    ph: Ph | None = None
    """Its pH, as a window."""
    viscosity: Viscosity | None = None
    """Its kinematic viscosity at 40 degC, which decides about aspiration."""
    hazards: Refs = ()
    """H statements of the mixture itself, and hazard words."""
    not_classified: Flag = False
    """Nothing is to be declared; an empty list alone does not say so."""
    wear: Refs = ()
    """What is worn when it is used away from a place that holds it."""
    use_within: Span | None = None
    """How long after it was made it may be used."""
    renew: Sentence | None = None
    """When it is made new."""
    if_contaminated: Sentence | None = None
    """What to do when something wrong got in."""
    leftovers: Ref | None = None
    """The container that takes what is left of it."""
    cost_to_replace: Sentence | None = None
    """What a ruined one costs; printed where somebody might ruin it."""


class SmallAmount(Located):
    """The amount below which a row does not count, which role decided it, when and why."""

    below: Amount
    """The amount; the lesser of the two things is compared, added up over the run."""
    decided_by: Ref
    """The role that decided."""
    decided: Day | None = None
    """The day of the decision."""
    because: Sentence
    """Why so little does no harm."""


class KeepApart(Located):
    """Groups that never meet in one bath, tray or container."""

    groups: Refs
    """The groups that never meet."""
    because: Sentence
    """What happens when they do."""
    small: SmallAmount | None = None
    """The amount below which the row does not count, with who decided."""
