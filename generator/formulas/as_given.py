"""Turns quantities into the plain numbers that a lab's own formula is written for."""

from collections.abc import Mapping
from typing import Any

from generator.units import UNITS, Quantity
from generator.units.dimension import NUMBER, Dimension


def plain_numbers(values: Mapping[str, Any], like: str, unit: str) -> tuple[dict[str, Any], dict[str, str]]:
    """The numbers as given, and the unit of each single quantity.

    Quantities of one kind are brought to one unit: that of the answer, if the formula names it or says which
    input it is like, else that of the first one given.
    """
    units: dict[Dimension, str] = {}
    first = values.get(like)
    if isinstance(first, Quantity):
        units[first.dimension] = first.unit
    if unit and UNITS[unit].dimension != NUMBER:
        units.setdefault(UNITS[unit].dimension, unit)
    plain = {name: _plain(value, units) for name, value in values.items()}
    said = {
        name: units.get(value.dimension, value.unit)
        for name, value in values.items()
        if isinstance(value, Quantity)
    }
    return plain, said


def _plain(value: Any, units: dict[Dimension, str]) -> Any:
    match value:
        case Quantity():
            if value.dimension == NUMBER:
                # A share is the number behind it: 5 % of something is 0.05 of it.
                return value.si
            return value.to(units.setdefault(value.dimension, value.unit)).number
        case Mapping():
            return {name: _plain(cell, units) for name, cell in value.items()}
        case tuple() | list():
            return tuple(_plain(each, units) for each in value)
    return value
