"""What a step records and sets: readings with their limits, counts, and temperature profiles."""

import re
from dataclasses import dataclass

from generator.model.located import Text
from generator.model.scalars import named, refuse, text, units_reader
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
