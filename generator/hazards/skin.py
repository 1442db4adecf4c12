"""Skin corrosion and irritation of a mixture by sums (UN GHS 3.2.3.3, tables 3.2.3 and 3.2.4)."""

from generator.hazards.classification import HazardClass
from generator.hazards.composition import Composition, Ingredient
from generator.hazards.extremes import extreme_ph_says, extreme_ph_step
from generator.hazards.limit_table import relevant, summed_limit
from generator.hazards.steps import Finding, Part, Step, Term, not_classified, number, reaches

CORROSIVE, IRRITANT = "Skin Corr.", "Skin Irrit."
_GRADES = ("1A", "1B", "1C")


def screen_skin(parts: tuple[Part, ...], composition: Composition) -> Finding:
    """Extreme pH first, then the substances for which sums do not hold, then the sums."""
    steps, classes = [], []
    if extreme_ph_says(composition):
        steps.append(extreme_ph_step(composition, f"{CORROSIVE} 1 H314"))
        classes.append(HazardClass(CORROSIVE, "1", "H314"))
    for step, found in _not_additive(parts):
        steps.append(step)
        classes += [found] if found is not None else []
    sums = _sums(tuple(part for part in parts if part.ingredient.additive))
    corrosive = [found for found in (*sums.classes, *classes) if found.short == CORROSIVE]
    kept = (corrosive or [*sums.classes, *classes])[:1]
    return Finding(tuple(kept), (*steps, *sums.steps))


def _sums(parts: tuple[Part, ...]) -> Finding:
    corrosive = _terms(tuple((part, corrosion_limit(part.ingredient)) for part in parts))
    irritant = _terms(tuple((part, irritation_limit(part.ingredient)) for part in parts))
    steps = []
    found = None
    if corrosive:
        found = _graded(parts) if reaches(_total(corrosive), 1) else None
        limit = summed_limit("Skin Corr.")
        steps.append(_step("Skin corrosion", corrosive, limit.clause, found, "corrosion", "Skin Corr."))
    if found is None and irritant:
        found = HazardClass(IRRITANT, "2", "H315") if reaches(_total(irritant), 1) else None
        steps.append(
            _step(
                "Skin irritation",
                irritant,
                "table 3.2.3",
                found,
                "skin irritation",
                "Skin Corr. as irritant",
            )
        )
    return Finding((found,) if found else (), tuple(steps))


def _terms(rows: tuple[tuple[Part, float | None], ...]) -> tuple[Term, ...]:
    terms = (_term(part, limit) for part, limit in rows)
    return tuple(term for term in terms if term is not None)


def _total(terms: tuple[Term, ...]) -> float:
    return sum(term.value for term in terms)


def _step(
    rule: str, terms: tuple[Term, ...], clause: str, found: HazardClass | None, what: str, name: str
) -> Step:
    outcome = f"{found.name} {found.code}" if found else not_classified(what)
    return Step(rule, clause, terms, _total(terms), "limit 1", outcome, summed_limit(name).evidence)


def _term(part: Part, limit: float | None) -> Term | None:
    """Share over limit, if the ingredient counts: from 1 %, or from its own limit where that is lower."""
    if limit is None or not reaches(part.percent, min(relevant("skin and eye"), limit)):
        return None
    return Term(part.name, f"{number(part.percent)} ÷ {number(limit)}", part.percent / limit)


def is_corrosive(part: Part) -> bool:
    """Whether the ingredient is classed, or has a limit, as corrosive to skin."""
    return corrosion_limit(part.ingredient) is not None


def corrosion_limit(one: Ingredient, grades: tuple[str, ...] = ()) -> float | None:
    """From which share an ingredient alone corrodes: its own limit, else 5 %; None if it does not corrode."""
    own = one.lowest_limit(CORROSIVE, grades)
    if own is not None:
        return own
    classed = [found for found in one.with_short(CORROSIVE) if not grades or found.category in grades]
    return summed_limit("Skin Corr.").limit if classed else None


def irritation_limit(one: Ingredient) -> float | None:
    """From which share an ingredient alone irritates: its own limit, else 1 % (corrosive) or 10 %."""
    own = one.lowest_limit(IRRITANT)
    if own is not None:
        return own
    if corrosion_limit(one) is not None:
        return min(summed_limit("Skin Corr. as irritant").limit, corrosion_limit(one) or 1)
    return summed_limit("Skin Irrit.").limit if one.with_short(IRRITANT) else None


def _graded(parts: tuple[Part, ...]) -> HazardClass:
    """The sub-category, where every corrosive ingredient has one; otherwise plain category 1."""
    counted = [part for part in parts if is_corrosive(part)]
    classed = [found.category for part in counted for found in part.ingredient.with_short(CORROSIVE)]
    if all(category in _GRADES for category in classed):
        for at in range(len(_GRADES)):
            limits = ((part, corrosion_limit(part.ingredient, _GRADES[: at + 1])) for part in counted)
            terms = (_term(part, limit) for part, limit in limits)
            if reaches(sum(term.value for term in terms if term is not None), 1):
                return HazardClass(CORROSIVE, _GRADES[at], "H314")
    return HazardClass(CORROSIVE, "1", "H314")


def _not_additive(parts: tuple[Part, ...]) -> list[tuple[Step, HazardClass | None]]:
    """Table 3.2.4: an ingredient for which sums do not hold counts by itself; its own limits go first."""
    rows: list[tuple[Step, HazardClass | None]] = []
    for part in parts:
        one = part.ingredient
        if one.additive or not (one.with_short(CORROSIVE) or one.with_short(IRRITANT)):
            continue
        corrodes = bool(one.with_short(CORROSIVE))
        name = "Skin not additive" if corrodes else "Skin not additive irritant"
        short, category, code = (CORROSIVE, "1", "H314") if corrodes else (IRRITANT, "2", "H315")
        generic = summed_limit(name)
        limit = one.lowest_limit(short) or generic.limit
        found = HazardClass(short, category, code) if reaches(part.percent, limit) else None
        term = Term(part.name, f"{number(part.percent)} %", part.percent)
        outcome = f"{found.name} {found.code}" if found else not_classified("this ingredient by itself")
        says = f"limit {number(limit)} %"
        rule = "Skin, sums do not hold"
        rows.append(
            (Step(rule, generic.clause, (term,), part.percent, says, outcome, generic.evidence), found)
        )
    return rows
