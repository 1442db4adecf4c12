"""Sensitisers, CMR substances, organ damage, ozone: each ingredient by itself."""

from generator.hazards.classification import HazardClass
from generator.hazards.composition import Composition, Ingredient
from generator.hazards.evidence import Evidence
from generator.hazards.limit_table import GenericLimit, single_limit
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

_SENSITISERS = ("Resp. Sens.", "Skin Sens.")
_LOWER_CODE = {"H370": "H371", "H372": "H373"}
# From which share a sensitiser is named on the label though the mixture is not classed (table 3.4.6; memory).
_ELICITS = {"1A": 0.01, "1": 0.1, "1B": 0.1}


def screen_long_term(parts: tuple[Part, ...], composition: Composition) -> Finding:
    """Every class of every ingredient that counts by itself (UN GHS 3.4 to 3.9, 5.1): not added to others."""
    return joined(tuple(_screen_part(part, composition) for part in parts))


def _screen_part(part: Part, composition: Composition) -> Finding:
    rows = []
    for one in part.ingredient.classes or ():
        generic = single_limit(one.short, one.category, composition.limit_set)
        if generic is not None:
            rows.append(_screen_class(part, one, _gas_limit(part, one, generic)))
    return joined(tuple(rows))


def _gas_limit(part: Part, one: HazardClass, generic: GenericLimit) -> GenericLimit:
    """A gas that sensitises the lungs (category 1 or 1B) counts from 0.2 % (table 3.4.5; memory)."""
    if part.ingredient.gas and one.short == "Resp. Sens." and one.category != "1A":
        return GenericLimit(0.2, generic.clause, Evidence.MEMORY)
    return generic


def _screen_class(part: Part, one: HazardClass, generic: GenericLimit) -> Finding:
    own = part.ingredient.lowest_limit(one.short, (one.category,))
    limit = own if own is not None else generic.limit
    lower = _lower_limit(part.ingredient, one, generic)
    found = _outcome(part.percent, one, limit, lower)
    outcome = f"{found.name} {found.code}" if found else not_classified(one.name)
    term = Term(part.name, f"{number(part.percent)} %", part.percent)
    says = f"limit {number(limit)} %" + (f", {number(lower)} % for category 2" if lower is not None else "")
    step = Step(
        f"{one.name} {one.code}", generic.clause, (term,), part.percent, says, outcome, generic.evidence
    )
    supplements = ("EUH208",) if found is None and _elicits(part, one, own) else ()
    return Finding((found,) if found else (), (step,), _unsure(part, one), supplements)


def _outcome(percent: float, one: HazardClass, limit: float, lower: float | None) -> HazardClass | None:
    if reaches(percent, limit):
        return HazardClass(one.short, one.category, one.code)
    if lower is not None and reaches(percent, lower):
        return HazardClass(one.short, "2", _LOWER_CODE[one.code])
    return None


def _lower_limit(one: Ingredient, of: HazardClass, generic: GenericLimit) -> float | None:
    """Where category 1 organ damage becomes category 2: the ingredient's own limit, else 1 %."""
    if generic.lower is None or of.code not in _LOWER_CODE:
        return None
    own = one.lowest_limit(of.short, ("2",))
    return own if own is not None else generic.lower


def _elicits(part: Part, one: HazardClass, own: float | None) -> bool:
    if one.short not in _SENSITISERS:
        return False
    return reaches(part.percent, own / 10 if own is not None else _ELICITS.get(one.category, 0.1))


def _unsure(part: Part, one: HazardClass) -> tuple[Unknown, ...]:
    if one.short in _SENSITISERS and one.category == "1" and part.ingredient.lowest_limit(one.short) is None:
        why = f"{one.name} without sub-category: 1 % is used, where sub-category 1A would be 0.1 %"
        return (Unknown(part.name, why),)
    return ()
