"""Irritated airways, drowsiness and aspiration, added up (UN GHS 3.8.3, 3.10.3)."""

from generator.hazards.classification import HazardClass
from generator.hazards.composition import Composition
from generator.hazards.limit_table import relevant, summed_limit, thin_limit
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
from generator.units import Quantity


def screen_organ(parts: tuple[Part, ...], composition: Composition) -> Finding:
    """STOT SE 3 for H335 and H336 apart, then aspiration, which also needs a thin liquid."""
    return joined((_stot("H335", parts), _stot("H336", parts), _aspiration(parts, composition)))


def is_thin(viscosity: Quantity) -> bool:
    """Whether a liquid of this kinematic viscosity at 40 degC may run into the lungs: up to 20.5 mm2/s."""
    return viscosity.to("mm2/s").number <= thin_limit()


def _has(part: Part, short: str, category: str, code: str) -> bool:
    one = part.ingredient
    all_of = (*(one.classes or ()), *(limit.hazard_class for limit in one.limits))
    return any((c.short, c.category, c.code) == (short, category, code) for c in all_of)


def _own(part: Part, code: str) -> float | None:
    lows = [limit.low for limit in part.ingredient.limits if limit.hazard_class.code == code]
    return min(lows, default=None)


def _stot(code: str, parts: tuple[Part, ...]) -> Finding:
    generic = summed_limit("STOT SE 3")
    rows = [(part, _own(part, code) or generic.limit) for part in parts if _has(part, "STOT SE", "3", code)]
    counted = [(part, limit) for part, limit in rows if reaches(part.percent, min(relevant("stot 3"), limit))]
    if not counted:
        return Finding()
    terms = tuple(
        Term(part.name, f"{number(part.percent)} ÷ {number(limit)}", part.percent / limit)
        for part, limit in counted
    )
    total = sum(term.value for term in terms)
    found = HazardClass("STOT SE", "3", code) if reaches(total, 1) else None
    what = "irritated airways" if code == "H335" else "drowsiness"
    outcome = f"{found.name} {code}" if found else not_classified(what)
    step = Step(f"STOT SE 3 {code}", generic.clause, terms, total, "limit 1", outcome, generic.evidence)
    return Finding((found,) if found else (), (step,))


def _aspiration(parts: tuple[Part, ...], composition: Composition) -> Finding:
    generic = summed_limit("Asp. Tox. 1")
    counted = [part for part in parts if part.ingredient.with_short("Asp. Tox.") and reaches(part.percent, 1)]
    if not counted:
        return Finding()
    terms = tuple(Term(part.name, number(part.percent), part.percent) for part in counted)
    total = sum(term.value for term in terms)
    enough = reaches(total, generic.limit)
    found = HazardClass("Asp. Tox.", "1", "H304") if enough and composition.thin is not False else None
    outcome = (
        f"{found.name} H304, if it is as thin as 20.5 mm²/s at 40 °C"
        if found
        else not_classified("aspiration")
    )
    says = f"limit {number(generic.limit)} %"
    step = Step("Aspiration", generic.clause, terms, total, says, outcome, generic.evidence)
    open_question = enough and composition.thin is None
    unknown = (Unknown("aspiration", "the viscosity at 40 °C is not known"),) if open_question else ()
    return Finding((found,) if found else (), (step,), unknown)
