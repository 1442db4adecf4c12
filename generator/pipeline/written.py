"""Frozen values as JSON rows and back: a record is the list of its fields, in their order."""

import json
import types
from collections.abc import Callable, Hashable, Mapping
from dataclasses import fields, is_dataclass
from enum import Enum
from functools import cache
from typing import Any, Literal, TypeVar, Union, cast, get_args, get_origin, get_type_hints

Made = TypeVar("Made")
Back = Callable[[Any], Any]


def write_row(value: object) -> bytes:
    """Records, tuples, texts, numbers and maps by text as JSON."""
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"), default=_plain, check_circular=False)
    return text.encode("utf-8", "surrogatepass")


def read_row(row: bytes) -> Any:
    """The lists and maps of a row that `write_row` wrote."""
    return json.loads(row.decode("utf-8", "surrogatepass"))


def value_of(kind: type[Made], data: Any) -> Made:
    """A value of this type from its lists and maps."""
    back = _back(cast(Hashable, kind))
    found: Made = back(data) if back else data
    return found


def _plain(value: Any) -> Any:
    """What JSON does not know by itself: a record, or a map that is no dict."""
    if isinstance(value, Mapping):
        return dict(value)
    return [getattr(value, name) for name in _names(cast(Hashable, type(value)))]


@cache
def _names(kind: Any) -> tuple[str, ...]:
    return tuple(field.name for field in fields(kind))


@cache
def _back(kind: Any) -> Back | None:
    """How JSON becomes a value of a type; None where it is one already."""
    if kind in (str, int, float, bool, None, type(None), object) or get_origin(kind) is Literal:
        return None
    if is_dataclass(kind):
        return _record(kind)
    if isinstance(kind, type) and issubclass(kind, Enum):
        return kind
    if isinstance(kind, type) and issubclass(kind, tuple):
        return lambda row: kind(*row)  # a place in a file: plain parts with names
    origin, inner = get_origin(kind), get_args(kind)
    if origin in (Union, types.UnionType):
        return _maybe(inner)
    if origin is tuple:
        return _tuple(inner)
    if isinstance(origin, type) and issubclass(origin, Mapping):
        return _map(_back(inner[1]))
    raise TypeError(f"{kind} cannot stand in a row")


def _record(kind: Any) -> Back:
    hints = get_type_hints(kind)
    backs = tuple(_back(hints[name]) for name in _names(kind))
    if not any(backs):
        return lambda row: kind(*row)
    return lambda row: kind(*(back(item) if back else item for back, item in zip(backs, row, strict=True)))


def _maybe(inner: tuple[Any, ...]) -> Back | None:
    (wanted,) = (one for one in inner if one is not type(None))
    back = _back(wanted)
    return (lambda row: None if row is None else back(row)) if back else None


def _tuple(inner: tuple[Any, ...]) -> Back:
    if len(inner) == 2 and inner[1] is Ellipsis:
        back = _back(inner[0])
        return (lambda row: tuple(map(back, row))) if back else tuple
    backs = tuple(_back(one) for one in inner)
    if not any(backs):
        return tuple
    return lambda row: tuple(back(item) if back else item for back, item in zip(backs, row, strict=True))


def _map(back: Back | None) -> Back:
    return (lambda row: {key: back(item) for key, item in row.items()}) if back else dict
