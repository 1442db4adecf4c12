"""The generic limits of the GHS by class, read from the data file."""

from dataclasses import dataclass
from functools import cache
from typing import Any

from generator.hazards.composition import LimitSet
from generator.hazards.evidence import Evidence
from generator.hazards.tables import read_table


@dataclass(frozen=True, slots=True)
class GenericLimit:
    """A limit in % w/w with its clause and evidence word; `lower`: from there the next category down."""

    limit: float
    clause: str
    evidence: Evidence
    lower: float | None = None


@dataclass(frozen=True, slots=True)
class AcuteTable:
    """Limits and converted points of one route for categories 1 to 4, with unit and statements."""

    unit: str
    limits: tuple[float, ...]
    points: tuple[float, ...]
    codes: tuple[str, ...]
    limits_evidence: Evidence
    points_evidence: Evidence


def _table() -> dict[str, Any]:
    return read_table("limits")


@cache
def summed_limit(name: str) -> GenericLimit:
    """A limit on a sum, by its name in the data file ("Skin Corr.")."""
    row = _table()["summed"][name]
    return GenericLimit(row["limit"], row["clause"], Evidence(row["evidence"]))


@cache
def single_limit(short: str, category: str, chosen: LimitSet) -> GenericLimit | None:
    """A limit on each ingredient by itself, or None where the class has no such limit."""
    for row in _table()["single"]:
        if row["class"] == short and category in row["categories"]:
            other = chosen == "us" and "us" in row
            value, evidence = (row["us"], "memory") if other else (row["limit"], row["evidence"])
            return GenericLimit(value, row["clause"], Evidence(evidence), row.get("lower"))
    return None


@cache
def acute_table(route: str) -> AcuteTable:
    """Table 3.1.1 and 3.1.2 for one route."""
    row = _table()["acute"][route]
    return AcuteTable(
        row["unit"],
        tuple(row["limits"]),
        tuple(row["points"]),
        tuple(row["codes"]),
        Evidence(row["limits_evidence"]),
        Evidence(row["points_evidence"]),
    )


def acute_relevant(category: str) -> float:
    """From which share an ingredient counts for acute toxicity: 0.1 % in categories 1 to 3, else 1 %."""
    return float(_table()["acute_relevant"].get(category, 1))


def acute_unknown() -> float:
    """The share of unknown ingredients above which the formula changes, 10 %."""
    return float(_table()["acute_unknown"])


def relevant(name: str) -> float:
    """From which share an ingredient counts: 1 % unless the hazard is grave."""
    return float(_table()["relevant"][name])


def thin_limit() -> float:
    """Up to which kinematic viscosity at 40 degC, in mm2/s, a liquid is thin enough to be breathed in."""
    return float(_table()["viscosity"]["limit"])


def extreme_ph() -> tuple[float, float, Evidence]:
    """At or below the first, at or above the second, a mixture counts as corrosive."""
    row = _table()["extreme_ph"]
    return row["low"], row["high"], Evidence(row["evidence"])
