"""Hazards that have no H statement: the table that ships; a lab may change rows and add its own."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from generator.hazards.evidence import Evidence
from generator.hazards.tables import read_table


@dataclass(frozen=True, slots=True)
class HazardWord:
    """Title, number of the ISO 7010 warning sign, body parts to protect, how well that is known."""

    id: str
    title: str
    symbol: str
    protect: tuple[str, ...]
    evidence: Evidence


def _word(row: dict[str, Any]) -> HazardWord:
    protect, evidence = tuple(row["protect"]), Evidence(row["evidence"])
    return HazardWord(row["id"], row["title"], row["symbol"], protect, evidence)


@cache
def _all() -> dict[str, HazardWord]:
    return {row["id"]: _word(row) for row in read_table("hazard_words")["words"]}


def hazard_word(id: str) -> HazardWord | None:
    """The shipped row of a hazard word, or None."""
    return _all().get(id)


def hazard_word_ids() -> tuple[str, ...]:
    """The words that ship, in the order of the table."""
    return tuple(_all())
