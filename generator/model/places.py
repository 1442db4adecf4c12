"""Anything with a position, what carries the part, what sounds, and what can ride along."""

from typing import Annotated

from generator.model.located import Located
from generator.model.scalars import (
    Amount,
    Count,
    Current,
    Day,
    Flag,
    OneOf,
    Positive,
    Ref,
    Refs,
    Sentence,
    Span,
    SpanLimits,
    Temperatures,
)


class Power(Located):
    """What the place is fed from, and the most it may be given."""

    supply: Sentence
    """What feeds it."""
    most: Current | None = None
    """The most current that it may be given."""


class NotRight(Located):
    """What to do when the look at a place fails, and which role to call."""

    say: Sentence | None = None
    """What to do."""
    call: Ref | None = None
    """The role that is called."""


class OutOfUse(Located):
    """Why a place is not to be used, since when and until when."""

    since: Day | None = None
    """Since when."""
    until: Day | None = None
    """Until when, as far as is known."""
    because: Sentence
    """Why it may not be used."""


class Place(Located):
    """A station, machine or bench, with everything that it demands of whoever uses it."""

    number: Count | None = None
    """Its station number."""
    title: Sentence
    """Its name as on the wall."""
    holds: Ref | None = None
    """The mixture that is in it."""
    cover: Annotated[str, OneOf("lid", "door", kind="cover")] | None = None
    """A lid has steps of its own; a door is opened and shut by the hand that puts in."""
    vented: Flag = False
    """Its cover lets gas out."""
    room_for: Positive | None = None
    """How many parts it takes at once."""
    temperature: Temperatures | None = None
    """The window in which it is run."""
    time: SpanLimits | None = None
    """How long a part stays in it, or for how long it is rinsed."""
    arrive: Annotated[str, OneOf("dry", "drained", "wet", "any", kind="way to arrive")] = "any"
    """How the part must come in."""
    allows: Refs | None = None
    """Residues that may ride in; what is not listed is refused."""
    clears: Refs = ()
    """Residues that it takes off."""
    leaves: Refs = ()
    """Residues that it leaves on the part."""
    makes: Annotated[str, OneOf("wet", "dry", kind="state of the part")] | None = None
    """Whether the part is wet or dry afterwards."""
    wear: Refs = ()
    """What must be on for every step here."""
    wear_when: Annotated[str, OneOf("hot", kind="condition for wear")] | None = None
    """The wear counts only once the place or the part is hot."""
    fresh_gloves: Flag = False
    """Gloves that touched something else are changed before."""
    hazards: Refs = ()
    """Hazard words of the place itself, such as hot-surface."""
    extraction: Sentence | None = None
    """How the air is drawn off, and how one sees that it is."""
    power: Power | None = None
    """What feeds it with current, and the most that it may be given."""
    water: Annotated[str, OneOf("mains", "deionised", kind="kind of water")] | None = None
    """Which water comes out of it."""
    drains_to: Ref | None = None
    """The container or drain that it runs into."""
    tray: Flag = False
    """What is rinsed off stays in a tray until a step empties it."""
    shows: Amount | None = None
    """The finest step that its meter or scale shows."""
    look: Sentence | None = None
    """What is looked at whenever it is opened."""
    not_right: NotRight | None = None
    """What to do when the look is not right."""
    timer: Ref | None = None
    """The timer that stands there."""
    keeper: Ref | None = None
    """The role that looks after it."""
    shared: Flag = False
    """It is a machine that is booked, claimed, saved and released."""
    book: Sentence | None = None
    """Where it is booked."""
    out_of_use: OutOfUse | None = None
    """It may not be used now, and why: a banner and a warning."""


class Rack(Located):
    """What carries the part."""

    title: Sentence
    """What it is called."""
    conducts: Flag | None = None
    """Whether current passes through it."""
    stands: Temperatures | None = None
    """The heat that it stands."""


class Timer(Located):
    """What sounds, what to do first when it does, and the longest time that it can be set to."""

    title: Sentence
    """What it is called."""
    when_it_sounds: Sentence | None = None
    """What to do first when it sounds."""
    at_most: Span | None = None
    """The longest time that it can be set to."""


class Residue(Located):
    """What can ride on part, gloves or tray."""

    title: Sentence
    """What it is called."""
