"""The room: when it is open, where help is, and what is true for all who work in it."""

from typing import Annotated

from pydantic import Field

from generator.model.given import Value, read_value
from generator.model.located import Located
from generator.model.reader import Reader
from generator.model.scalars import ClockTime, Limits, Listed, Name, Named, OneOf, Ref, Refs, Sentence, Span


class Session(Located):
    """A time slot of the room."""

    name: Sentence
    from_: ClockTime = Field(alias="from")
    until: ClockTime


class Help(Located):
    """Where help is; `emergency` is demanded by the rule `no-emergency-line`."""

    emergency: Sentence | None = None
    eyewash: Sentence | None = None
    shower: Sentence | None = None
    spill_kit: Sentence | None = None
    first_aid: Sentence | None = None
    extinguisher: Sentence | None = None
    waste_questions: Ref | None = None


_ALONE = OneOf("never", "low-hazard only", "allowed", kind="answer to working alone")
_GHS = OneOf("rev10", "clp", kind="edition of precautionary statements")


class Room(Located):
    """The noun `lab`: the room and its rules."""

    name: Sentence
    room: Sentence
    title: Sentence | None = None
    language: Sentence = "en"  # type: ignore[assignment]
    sessions: Annotated[tuple[Session, ...], Listed] = ()
    pack_up: Span | None = None
    working_alone: Annotated[str, _ALONE] | None = None
    base_wear: Refs = ()
    who_may_print: Refs = ()
    sheets_good_for: Span | None = None
    help: Help = Help.model_construct()
    unattended_notice: Sentence | None = None
    unattended_at_most: Span | None = None
    ghs: Annotated[str, _GHS] = "rev10"


class Emergency(Located):
    """What is done first, and then, when something happens."""

    when: Sentence
    first: Sentence
    then: Sentence | None = None


class GlossaryEntry(Located):
    """One word for one thing; `not` lists the words that are not used for it."""

    term: Sentence | None = None
    means: Sentence
    not_: Refs = Field(default=(), alias="not")


class CalculatorSettings(Located):
    """This lab's values for one formula: defaults, usual ranges, and limits never to be passed."""

    defaults: Annotated[dict[Name, Annotated[Value, Reader(read_value)]], Named] = {}
    usual: Annotated[dict[Name, Limits], Named] = {}
    never_above: Annotated[dict[Name, Annotated[Value, Reader(read_value)]], Named] = {}
