"""Hazard to life in water, acute and long-term, by sums with M-factors (UN GHS 4.1.3.5.5)."""

from dataclasses import dataclass

from generator.hazards.classification import HazardClass
from generator.hazards.limit_table import relevant, summed_limit
from generator.hazards.steps import (
    Finding,
    Part,
    Step,
    Term,
    Unknown,
    joined,
    not_classified,
    number,
    reaches,
)

ACUTE, CHRONIC = "Aquatic Acute", "Aquatic Chronic"
_CODES = {ACUTE: ("H400", "H401", "H402"), CHRONIC: ("H410", "H411", "H412", "H413")}


@dataclass(frozen=True, slots=True)
class _Counted:
    part: Part
    category: int
    m: float
    m_known: bool


def screen_aquatic(parts: tuple[Part, ...]) -> Finding:
    """Acute 1 to 3 and Chronic 1 to 4: the first category reached counts, and the rows stop there."""
    return joined((_screen(ACUTE, parts), _screen(CHRONIC, parts)))


def _counted(short: str, parts: tuple[Part, ...]) -> list[_Counted]:
    rows = []
    for part in parts:
        one = part.ingredient
        for found in one.with_short(short):
            category = int(found.category)
            m = (one.m_acute if short == ACUTE else one.m_chronic) if category == 1 else 1.0
            row = _Counted(part, category, m or 1.0, m is not None)
            floor = relevant("aquatic 1") / row.m if category == 1 else relevant("aquatic other")
            if reaches(part.percent, floor):
                rows.append(row)
    return rows


def _screen(short: str, parts: tuple[Part, ...]) -> Finding:
    counted = _counted(short, parts)
    if not counted:
        return Finding()
    unknown = tuple(
        Unknown(row.part.name, f"M-factor for {short} 1 not known: 1 is used, which may be too low")
        for row in counted
        if not row.m_known
    )
    steps = []
    for category in range(1, len(_CODES[short]) + 1):
        step, found = _row(short, category, counted)
        steps.append(step)
        if found is not None:
            return Finding((found,), tuple(steps), unknown)
    return Finding((), tuple(steps), unknown)


def _row(short: str, category: int, counted: list[_Counted]) -> tuple[Step, HazardClass | None]:
    """One category: each category above counts ten times more; Chronic 4 is a plain sum without M."""
    generic = summed_limit("Aquatic")
    plain = short == CHRONIC and category == 4
    terms = tuple(_term(row, category, plain) for row in counted if row.category <= category)
    total = sum(term.value for term in terms)
    code = _CODES[short][category - 1]
    found = HazardClass(short, str(category), code) if reaches(total, generic.limit) else None
    name = f"{short} {category}"
    outcome = f"{name} {code}" if found else not_classified(name)
    says = f"limit {number(generic.limit)} %"
    return Step(name, generic.clause, terms, total, says, outcome, generic.evidence), found


def _term(row: _Counted, category: int, plain: bool) -> Term:
    factor = 1 if plain else 10 ** (category - row.category)
    m = 1.0 if plain else row.m
    working = number(row.part.percent)
    working += f" × M {number(m)}" if m != 1 else ""
    working += f" × {factor}" if factor != 1 else ""
    return Term(row.part.name, working, row.part.percent * m * factor)
