"""The substances that ship: classes, specific limits, M-factors and groups, each with its evidence word."""

import re
from dataclasses import dataclass
from functools import cache
from typing import Any

from generator.hazards.classification import HazardClass, SpecificLimit, read_class, read_limit
from generator.hazards.composition import Ate
from generator.hazards.evidence import Evidence
from generator.hazards.tables import read_table


@dataclass(frozen=True, slots=True)
class KnownSubstance:
    """One entry; limits in % w/w of the pure substance. An empty `classes` says "not classified".

    `evidence` and `note` are printed with it: a fact from memory is shown as such.
    """

    id: str
    name: str
    cas: str
    formula: str
    molar_mass: float
    also: tuple[str, ...]
    index: str
    classes: tuple[HazardClass, ...]
    limits: tuple[SpecificLimit, ...]
    m_acute: float | None
    m_chronic: float | None
    ate: tuple[Ate, ...]
    supplements: tuple[str, ...]
    epa_groups: tuple[int, ...]
    epa_groups_diluted: tuple[int, ...]
    evidence: Evidence
    note: str

    @property
    def codes(self) -> tuple[str, ...]:
        """Its statements, each once."""
        return tuple(dict.fromkeys(one.code for one in self.classes))


def _entry(row: dict[str, Any]) -> KnownSubstance:
    m = row.get("m_factor", {})
    return KnownSubstance(
        row["id"],
        row["name"],
        row["cas"],
        row["formula"],
        row["molar_mass"],
        tuple(row["also"]),
        row["index"],
        tuple(read_class(text) for text in row["classes"]),
        tuple(read_limit(text) for text in row["limits"]),
        m.get("acute"),
        m.get("chronic"),
        tuple(Ate(route, value) for route, value in row.get("ate", {}).items()),
        tuple(row.get("supplements", ())),
        tuple(row.get("epa_groups", ())),
        tuple(row.get("epa_groups_diluted", row.get("epa_groups", ()))),
        Evidence(row["evidence"]),
        row["note"],
    )


@cache
def known_substances() -> tuple[KnownSubstance, ...]:
    """Every entry that ships."""
    return tuple(_entry(row) for row in read_table("substances")["substances"])


@cache
def _by_cas() -> dict[str, KnownSubstance]:
    return {entry.cas: entry for entry in known_substances()}


def substance_by_cas(cas: str) -> KnownSubstance | None:
    """The entry with this CAS number, or None: a substance that does not ship is not guessed at."""
    return _by_cas().get(cas.strip())


def substance_by_name(name: str) -> KnownSubstance | None:
    """The entry with this name, id or other spelling; None if there is none.

    Case, hyphens and sulph/sulf make no difference, nor what follows a name in brackets or after three dots.
    """
    wanted = plain_name(name)
    for entry in known_substances():
        if wanted in {plain_name(other) for other in (entry.id, entry.name, *entry.also)}:
            return entry
    return None


def plain_name(name: str) -> str:
    """A name without what spelling and habit change: "Sulphuric acid ... %" is "sulfuric acid"."""
    words = name.lower().replace("sulph", "sulf").replace("-", " ")
    head = re.split(r"\s*(?:\.\.\.|…|\s\()", words)[0]
    return " ".join(head.split())
