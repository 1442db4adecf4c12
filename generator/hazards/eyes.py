"""Serious eye damage and eye irritation of a mixture by sums (UN GHS 3.3.3.3, tables 3.3.3 and 3.3.4)."""

from generator.hazards.classification import HazardClass
from generator.hazards.composition import Composition, Ingredient
from generator.hazards.extremes import extreme_ph_says, extreme_ph_step
from generator.hazards.limit_table import relevant, summed_limit
from generator.hazards.skin import corrosion_limit
from generator.hazards.steps import Finding, Part, Step, Term, not_classified, number, reaches

DAMAGING, IRRITANT = "Eye Dam.", "Eye Irrit."


def screen_eyes(parts: tuple[Part, ...], composition: Composition) -> Finding:
    """Extreme pH first, then the substances for which sums do not hold, then the sums.

    What corrodes skin damages eyes: it counts once, with the lower of its limits for the eye or for the skin.
    """
    steps: list[Step] = []
    classes: list[HazardClass] = []
    if extreme_ph_says(composition):
        steps.append(extreme_ph_step(composition, f"{DAMAGING} 1 H318"))
        classes.append(HazardClass(DAMAGING, "1", "H318"))
    for step, found in _not_additive(parts):
        steps.append(step)
        classes += [found] if found is not None else []
    sums = _sums(tuple(part for part in parts if part.ingredient.additive))
    classes += sums.classes
    damaging = [found for found in classes if found.short == DAMAGING]
    return Finding(tuple((damaging or classes)[:1]), (*steps, *sums.steps))


def _sums(parts: tuple[Part, ...]) -> Finding:
    damaging = _terms(tuple((part, damage_limit(part.ingredient)) for part in parts))
    irritant = _terms(tuple((part, eye_irritation_limit(part.ingredient)) for part in parts))
    steps = []
    found = None
    if damaging:
        found = HazardClass(DAMAGING, "1", "H318") if _reached(damaging) else None
        steps.append(_step("Serious eye damage", damaging, found, "eye damage", DAMAGING))
    if found is None and irritant:
        found = HazardClass(IRRITANT, "2", "H319") if _reached(irritant) else None
        steps.append(_step("Eye irritation", irritant, found, "eye irritation", IRRITANT))
    return Finding((found,) if found else (), tuple(steps))


def _terms(rows: tuple[tuple[Part, float | None], ...]) -> tuple[Term, ...]:
    return tuple(
        Term(part.name, f"{number(part.percent)} ÷ {number(limit)}", part.percent / limit)
        for part, limit in rows
        if limit is not None and reaches(part.percent, min(relevant("skin and eye"), limit))
    )


def _reached(terms: tuple[Term, ...]) -> bool:
    return reaches(sum(term.value for term in terms), 1)


def _step(rule: str, terms: tuple[Term, ...], found: HazardClass | None, what: str, name: str) -> Step:
    generic = summed_limit(name)
    outcome = f"{found.name} {found.code}" if found else not_classified(what)
    total = sum(term.value for term in terms)
    return Step(rule, generic.clause, terms, total, "limit 1", outcome, generic.evidence)


def damage_limit(one: Ingredient) -> float | None:
    """From which share an ingredient alone damages eyes: its own limit for the eye or the skin, else 3 %.

    A limit for the skin says something of the eye only where the entry has a band for eyes below it (as
    acids of Annex VI have); without one the 3 % of table 3.3.3 holds, should the skin's own limit be higher.
    """
    skin, eye = one.lowest_limit("Skin Corr."), one.lowest_limit(DAMAGING)
    generic = summed_limit(DAMAGING).limit
    if skin is not None and eye is None and one.lowest_limit(IRRITANT) is None:
        return min(skin, generic)
    own = [limit for limit in (eye, skin) if limit is not None]
    if own:
        return min(own)
    classed = one.with_short(DAMAGING) or corrosion_limit(one) is not None
    return generic if classed else None


def eye_irritation_limit(one: Ingredient) -> float | None:
    """From which share an ingredient alone irritates eyes: its own limit, else 1 % (damaging) or 10 %."""
    own = one.lowest_limit(IRRITANT)
    if own is not None:
        return own
    damage = damage_limit(one)
    if damage is not None:
        return min(summed_limit("Eye Dam. as irritant").limit, damage)
    return summed_limit(IRRITANT).limit if one.with_short(IRRITANT) else None


def _not_additive(parts: tuple[Part, ...]) -> list[tuple[Step, HazardClass | None]]:
    """Table 3.3.4: an ingredient for which sums do not hold counts by itself; its own limits go first."""
    rows: list[tuple[Step, HazardClass | None]] = []
    for part in parts:
        one = part.ingredient
        damages = damage_limit(one) is not None
        if one.additive or not (damages or one.with_short(IRRITANT)):
            continue
        generic = summed_limit("Eye not additive" if damages else "Eye not additive irritant")
        own = [x for x in (one.lowest_limit(DAMAGING), one.lowest_limit("Skin Corr.")) if x is not None]
        limit = (min(own, default=None) if damages else one.lowest_limit(IRRITANT)) or generic.limit
        kind = HazardClass(DAMAGING, "1", "H318") if damages else HazardClass(IRRITANT, "2", "H319")
        found = kind if reaches(part.percent, limit) else None
        outcome = f"{kind.name} {kind.code}" if found else not_classified("this ingredient by itself")
        term = Term(part.name, f"{number(part.percent)} %", part.percent)
        says = f"limit {number(limit)} %"
        rule = "Eyes, sums do not hold"
        rows.append(
            (Step(rule, generic.clause, (term,), part.percent, says, outcome, generic.evidence), found)
        )
    return rows
