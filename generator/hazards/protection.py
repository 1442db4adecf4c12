"""What statements ask for at the bench: parts to protect, eyewash, extraction, sign-off, room for gas."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from generator.hazards.tables import read_table


@dataclass(frozen=True, slots=True)
class Protection:
    """A body part to protect, the statements that ask for it, why, and where that is from.

    `unless_extraction`: working extraction at the place answers it as well.
    """

    part: str
    because: tuple[str, ...]
    why: str
    source: str
    unless_extraction: bool = False


@dataclass(frozen=True, slots=True)
class _Row:
    codes: frozenset[str]
    parts: tuple[str, ...]
    why: str
    source: str
    unless_extraction: bool


def _row(row: dict[str, Any]) -> _Row:
    codes, parts = frozenset(row["codes"]), tuple(row["parts"])
    return _Row(codes, parts, row["why"], row["source"], row["unless_extraction"])


@cache
def _rows() -> tuple[_Row, ...]:
    return tuple(_row(row) for row in read_table("protection")["rows"])


@cache
def _set(name: str) -> frozenset[str]:
    return frozenset(read_table("protection")[name]["codes"])


_PARTS = ("eyes", "face", "hands", "body", "lungs")


def _singles(codes: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(part for code in codes for part in code.split("+")))


def asks_protection(codes: tuple[str, ...]) -> tuple[Protection, ...]:
    """The parts to protect, each once, eyes first, then face, hands, body, lungs, with the gravest reason."""
    singles = _singles(codes)
    return tuple(found for part in _PARTS if (found := _for_part(part, singles)) is not None)


def _for_part(part: str, codes: tuple[str, ...]) -> Protection | None:
    rows = [row for row in _rows() if part in row.parts and row.codes.intersection(codes)]
    if not rows:
        return None
    because = tuple(dict.fromkeys(code for row in rows for code in codes if code in row.codes))
    return Protection(part, because, rows[0].why, rows[0].source, all(row.unless_extraction for row in rows))


def needs_eyewash(codes: tuple[str, ...]) -> tuple[str, ...]:
    """Those of the codes for which an eyewash is demanded: H314, H318, H319."""
    return tuple(code for code in _singles(codes) if code in _set("eyewash"))


def needs_extraction(codes: tuple[str, ...]) -> tuple[str, ...]:
    """Those of the codes that are not to be breathed at all: H330, H331, H334."""
    return tuple(code for code in _singles(codes) if code in _set("extraction"))


def needs_sign_off(codes: tuple[str, ...]) -> tuple[str, ...]:
    """Those of the codes for which a role needs a sign-off: H314, H330, H334, H350."""
    return tuple(code for code in _singles(codes) if code in _set("sign_off"))


def grave_as_bought(codes: tuple[str, ...]) -> tuple[str, ...]:
    """Those of the codes that a role without sign-off never uses as bought: H300, H310, H314, H330."""
    return tuple(code for code in _singles(codes) if code in _set("concentrate"))


def oxidiser(codes: tuple[str, ...]) -> tuple[str, ...]:
    """Those of the codes that say oxidiser: H270, H271, H272."""
    return tuple(code for code in _singles(codes) if code in _set("oxidiser"))


def gas_maker(codes: tuple[str, ...]) -> tuple[str, ...]:
    """Those that say gas may form: oxidisers (they give oxygen), H260, H261, EUH029, EUH031, EUH032."""
    return tuple(code for code in _singles(codes) if code in _set("gas_maker"))
