"""A noun of the model as plain data in its author's own words, which the reader takes back."""

import datetime
from collections.abc import Mapping
from functools import cache
from typing import Any

from generator.model import ID, MARKS, WHERE, FormulaRef, Leg, Located, Number, Portion, Reading
from generator.units import Clock, Counted, Quantity, Window, write_quantity

_OURS = ("where", "marks")


def plain_noun(noun: Located, without: tuple[str, ...] = ()) -> dict[str, Any]:
    """Every field that says something, by the author's name for it; one spelling for each value."""
    out: dict[str, Any] = {}
    for name, shown, usual in _fields_of(type(noun)):
        value = getattr(noun, name)
        if value is not None and name not in without and value != usual:
            out[shown] = plain_value(value)
    return out


@cache
def _fields_of(kind: type[Located]) -> tuple[tuple[str, str, Any], ...]:
    """An author's fields of a noun: name, the author's name for it, and what it is where nothing is said."""
    return tuple(
        (name, str(field.alias or name), field.get_default(call_default_factory=True))
        for name, field in kind.model_fields.items()
        if name not in _OURS and field.validation_alias != ID
    )


def plain_value(value: object) -> Any:
    """Dict, list and str."""
    if isinstance(value, Located):
        return plain_noun(value)
    if isinstance(value, Mapping):
        return {str(key): plain_value(inner) for key, inner in value.items() if key not in (WHERE, MARKS)}
    if isinstance(value, list | tuple):
        return [plain_value(item) for item in value]
    if isinstance(value, FormulaRef):
        given = {"given": plain_value(value.given)} if value.given else {}
        return {"formula": str(value.formula), **given}
    if isinstance(value, Leg):
        return {"to": plain_value(value.to), "hold": plain_value(value.hold)}
    return written(value)


def written(value: object) -> str:
    """One value as an author would type it."""
    if isinstance(value, Quantity):
        return write_quantity(value)
    if isinstance(value, Window):
        return write_window(value)
    if isinstance(value, Reading):
        return write_window(value.limit) if value.limit else (value.unit or value.kind)
    if isinstance(value, Portion):
        tail = f" as {value.counted_as}" if value.counted_as else ""
        return f"{write_quantity(value.amount)}{tail}" if value.amount else "rest"
    if isinstance(value, Number):
        return value.text
    if isinstance(value, Counted):
        return f"{value.number} {value.word}"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, datetime.date):
        return value.isoformat()
    assert isinstance(value, str | int | Clock), type(value)
    return str(value)


def write_window(window: Window) -> str:
    """ "6 to 10 min", "up to 8 min", "at least 90 s", or one value."""
    low, high = window.low, window.high
    if low is None or high is None:
        return f"up to {write_quantity(high)}" if high else f"at least {write_quantity(_there(low))}"
    if low == high:
        return write_quantity(high)
    first = write_quantity(low)
    if low.unit == high.unit and low.unit:
        first = first.removesuffix(low.unit).strip()
    return f"{first} to {write_quantity(high)}"


def _there(value: Quantity | None) -> Quantity:
    assert value is not None
    return value
