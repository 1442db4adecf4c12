"""One action of the student, and everything that hangs on it."""

import re
from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from generator.model.given import FormulaRef, Value, read_power, read_time, read_used, read_value
from generator.model.located import Located, Text
from generator.model.reader import Reader
from generator.model.scalars import (
    Flag,
    Id,
    Name,
    Named,
    OneOf,
    Positive,
    Ref,
    Refs,
    Sentence,
    Span,
    SpanLimits,
    Times,
    named,
    refuse,
    text,
    units_reader,
)
from generator.model.verbs import VERBS
from generator.units import UNITS, Counted, Quantity, Window, read_counted, read_quantity, read_window


@dataclass(frozen=True, slots=True)
class Reading:
    """What is written down: words, a picture, or a number with unit and, where there is one, a limit."""

    kind: str
    unit: str = ""
    limit: Window | None = None


def read_reading(value: object) -> Reading:
    """`text`, `picture`, `count`, a unit, or a window with its unit."""
    words = text(value)
    if words in ("text", "picture", "count"):
        return Reading(words)
    if words in UNITS or not re.search(r"\d", words):
        unit: Quantity = units_reader(read_quantity)(Text(f"1 {words}", words.where))
        return Reading("number", unit.unit)
    window: Window = units_reader(read_window)(words)
    end = window.low or window.high
    assert end is not None
    return Reading("number", end.unit, window)


def read_rock(value: object) -> Counted:
    """`10 times` or `true`, which stands for once."""
    if value == "true":
        return Counted(1, "time")
    found: Counted = units_reader(read_counted)(value)
    return found


@dataclass(frozen=True, slots=True)
class Leg:
    """One part of a temperature profile: where to, and how long it stays."""

    to: Quantity
    hold: Quantity


def read_setting(value: object) -> Text | tuple[Leg, ...]:
    """A setting of a machine: words, or a profile of `{to, hold}`."""
    if not isinstance(value, list):
        return text(value)
    return tuple(_leg(item) for item in value)


def _leg(item: object) -> Leg:
    fields = named(item)
    if not isinstance(fields, dict) or set(fields) != {"to", "hold"}:
        raise refuse(
            "unreadable", "a profile is a list of {to, hold}", "write `[{to: 650 degC, hold: 20 min}]`"
        )
    read = units_reader(read_quantity)
    return Leg(read(fields["to"]), read(fields["hold"]))


class Hold(Located):
    """Whom to wait for, and until what has been agreed."""

    who: Ref | None = None
    until: Sentence


class Since(Located):
    """How long after the end of an earlier step this one may start."""

    step: Ref
    time: SpanLimits
    because: Sentence | None = None


class Pause(Located):
    """Work may stop here: how the part is kept, and for how long."""

    keep: Sentence
    time: SpanLimits


class PowerOn(Located):
    """Current or elements on: to what, and how fast."""

    to: Annotated[Quantity | FormulaRef, Reader(read_power)]
    ramp: Span | None = None


class Ask(Located):
    """A self-check question with its answer."""

    question: Sentence
    answer: Sentence


class Picture(Located):
    """A picture and the words for those who do not see it."""

    file: Sentence
    alt: Sentence | None = None


Recorded = Annotated[dict[Name, Annotated[Reading, Reader(read_reading)]], Named]
_STAYS = OneOf("here", "near", "away", kind="way to stay")


class Fail(Located):
    """What follows when a check fails: words, a mend, a step to go back to, how often, whom to call."""

    say: Sentence | None = None
    mend: "Step | None" = None
    redo: Ref | None = None
    at_most: Positive | None = None
    call: Ref | None = None


class Watch(Located):
    """What is looked at again and again while something runs."""

    every: Span
    check: Sentence | None = None
    record: Recorded = {}
    fail: Fail | None = None


class Step(Located):
    """One action; the verb and the place imply the change of state."""

    id: Id
    say: Sentence
    card: Sentence | None = None
    do: Annotated[str, OneOf(*VERBS, kind="verb")]
    at: Ref | None = None
    into: Ref | None = None
    use: Annotated[dict[Ref, Annotated[Quantity | Text, Reader(read_used)]], Named] = {}
    for_: Annotated[Quantity | FormulaRef, Reader(read_time)] | None = Field(default=None, alias="for")
    takes: Span | None = None
    stay: Annotated[str, _STAYS] = "here"
    alarm: Ref | None = None
    when_it_sounds: Sentence | None = None
    look: Sentence | None = None
    check: Sentence | None = None
    record: Recorded = {}
    fail: Fail | None = None
    hold: Hold | None = None
    since: Since | None = None
    pause: Pause | None = None
    put_on: Refs = ()
    take_off: Refs = ()
    fresh: Flag = False
    wash_hands: Flag = False
    rack: Ref | None = None
    rock: Annotated[Counted, Reader(read_rock)] | None = None
    set: Annotated[dict[Name, Annotated[Text | tuple[Leg, ...], Reader(read_setting)]], Named] = {}
    power: PowerOn | None = None
    watch: Watch | None = None
    waste: Ref | None = None
    repeat: Times | None = None
    who: Ref | None = None
    why: Sentence | None = None
    ask: Ask | None = None
    picture: Picture | None = None
    formulas: Refs = ()
    given: Annotated[dict[Name, Annotated[Value, Reader(read_value)]], Named] = {}
    was: Id | None = None


Fail.model_rebuild()
Watch.model_rebuild()
