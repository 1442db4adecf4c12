"""The room: when it is open, where help is, and what is true for all who work in it."""

from typing import Annotated

from pydantic import Field

from generator.model.given import Value, read_value
from generator.model.located import Located
from generator.model.reader import Reader
from generator.model.scalars import (
    ClockTime,
    Language,
    Limits,
    Listed,
    Name,
    Named,
    OneOf,
    Ref,
    Refs,
    Sentence,
    Span,
)


class Session(Located):
    """A time slot of the room."""

    name: Sentence
    """What the session is called."""
    from_: ClockTime = Field(alias="from")
    """When it begins."""
    until: ClockTime
    """When it ends."""


class Help(Located):
    """Where help is; `emergency` is demanded by the rule `no-emergency-line`."""

    emergency: Sentence | None = None
    """The emergency line."""
    eyewash: Sentence | None = None
    """Where the eyewash is."""
    shower: Sentence | None = None
    """Where the emergency shower is."""
    spill_kit: Sentence | None = None
    """Where the spill kit is."""
    first_aid: Sentence | None = None
    """Where the first-aid box is."""
    extinguisher: Sentence | None = None
    """Where the extinguisher is, and of what kind."""
    waste_questions: Ref | None = None
    """The role that is asked about waste."""


_ALONE = OneOf("never", "low-hazard only", "allowed", kind="answer to working alone")
_PAPER = OneOf("A4", "Letter", kind="paper for labels")
_GHS = OneOf("rev10", "clp", kind="edition of precautionary statements")


class Room(Located):
    """The noun `lab`: the room and its rules."""

    name: Sentence
    """The college or institute."""
    room: Sentence
    """The room's number or name on the door."""
    title: Sentence | None = None
    """What the lab is called."""
    language: Language = "en"  # type: ignore[assignment]
    """The language in which the files are written."""
    sessions: Annotated[tuple[Session, ...], Listed] = ()
    """When the room is open for a class."""
    pack_up: Span | None = None
    """Time that is needed at the end of a session."""
    working_alone: Annotated[str, _ALONE] | None = None
    """Whether one person may work alone."""
    base_wear: Refs = ()
    """What everybody wears in the room, always."""
    who_may_print: Refs = ()
    """The roles that may print cards."""
    sheets_good_for: Span | None = None
    """How old a supplier's sheet may be."""
    help: Help = Help.model_construct()
    """Where help is: emergency line, eyewash, first aid."""
    unattended_notice: Sentence | None = None
    """What the sign on the door says while something runs unattended."""
    unattended_at_most: Span | None = None
    """How long something may run while nobody is there."""
    paper: Annotated[tuple[Annotated[str, _PAPER], ...], Listed] = ("A4",)
    """The sheets that the lab's printer holds; label sheets are made for each."""
    ghs: Annotated[str, _GHS] = "rev10"
    """Which edition of the GHS statements is printed."""


class Emergency(Located):
    """What is done first, and then, when something happens."""

    when: Sentence
    """What has happened."""
    first: Sentence
    """What is done first."""
    then: Sentence | None = None
    """What is done then."""


class GlossaryEntry(Located):
    """One word for one thing; `not` lists the words that are not used for it."""

    term: Sentence | None = None
    """The word as it is printed; without it the id stands."""
    means: Sentence
    """What it means, in plain words."""
    not_: Refs = Field(default=(), alias="not")
    """Words that are not used for it."""


class CalculatorSettings(Located):
    """This lab's values for one formula: defaults, usual ranges, and limits never to be passed."""

    defaults: Annotated[dict[Name, Annotated[Value, Reader(read_value)]], Named] = {}
    """Values that stand where the job gives none."""
    usual: Annotated[dict[Name, Limits], Named] = {}
    """Ranges outside which a job's value is a warning."""
    never_above: Annotated[dict[Name, Annotated[Value, Reader(read_value)]], Named] = {}
    """Limits that an input or the answer never passes."""
