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
    most: Current | None = None


class NotRight(Located):
    """What to do when the look at a place fails, and which role to call."""

    say: Sentence | None = None
    call: Ref | None = None


class OutOfUse(Located):
    """Why a place is not to be used, since when and until when."""

    since: Day | None = None
    until: Day | None = None
    because: Sentence


class Place(Located):
    """A station, machine or bench, with everything that it demands of whoever uses it."""

    number: Count | None = None
    title: Sentence
    holds: Ref | None = None
    cover: Annotated[str, OneOf("lid", "door", kind="cover")] | None = None
    vented: Flag = False
    room_for: Positive | None = None
    temperature: Temperatures | None = None
    time: SpanLimits | None = None
    arrive: Annotated[str, OneOf("dry", "drained", "wet", "any", kind="way to arrive")] = "any"
    allows: Refs | None = None
    clears: Refs = ()
    leaves: Refs = ()
    makes: Annotated[str, OneOf("wet", "dry", kind="state of the part")] | None = None
    wear: Refs = ()
    wear_when: Annotated[str, OneOf("hot", kind="condition for wear")] | None = None
    fresh_gloves: Flag = False
    hazards: Refs = ()
    extraction: Sentence | None = None
    power: Power | None = None
    water: Annotated[str, OneOf("mains", "deionised", kind="kind of water")] | None = None
    drains_to: Ref | None = None
    tray: Flag = False
    shows: Amount | None = None
    look: Sentence | None = None
    not_right: NotRight | None = None
    timer: Ref | None = None
    keeper: Ref | None = None
    shared: Flag = False
    book: Sentence | None = None
    out_of_use: OutOfUse | None = None


class Rack(Located):
    """What carries the part."""

    title: Sentence
    conducts: Flag | None = None
    stands: Temperatures | None = None


class Timer(Located):
    """What sounds, what to do first when it does, and the longest time that it can be set to."""

    title: Sentence
    when_it_sounds: Sentence | None = None
    at_most: Span | None = None


class Residue(Located):
    """What can ride on part, gloves or tray."""

    title: Sentence
