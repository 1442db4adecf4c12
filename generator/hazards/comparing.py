"""What a composition implies beside what a mixture declares: classes not declared, statements dropped."""

from dataclasses import dataclass

from generator.hazards.aquatic import ACUTE
from generator.hazards.classification import HazardClass
from generator.hazards.composition import Composition, Ingredient, NotScreened
from generator.hazards.eyes import damage_limit, eye_irritation_limit
from generator.hazards.limit_table import acute_table, single_limit, summed_limit
from generator.hazards.screening import Screening
from generator.hazards.shares import Share, shares_of
from generator.hazards.skin import corrosion_limit, irritation_limit
from generator.hazards.steps import reaches
from generator.hazards.stronger import covered_by


@dataclass(frozen=True, slots=True)
class Dropped:
    """An ingredient's statement that the mixture does not carry, with its share and cut-off in % w/w."""

    ingredient: str
    code: str
    percent: float
    cut_off: float


def undeclared_classes(screening: Screening, declared: tuple[str, ...]) -> tuple[HazardClass, ...]:
    """Classes that the composition implies and that neither the declared statements nor stronger ones say."""
    return tuple(one for one in screening.classes if not covered_by(one.code, declared))


def dropped_statements(
    composition: Composition, declared: tuple[str, ...]
) -> tuple[Dropped, ...] | NotScreened:
    """Statements of ingredients above their cut-off, neither on the mixture nor covered by a stronger one.

    Classes that rest on a test (all H2..: H272, H290 and the like) are left out.
    """
    shares = shares_of(composition)
    if isinstance(shares, NotScreened):
        return shares
    found = (_dropped(row, one, declared) for row in shares.rows for one in row.ingredient.classes or ())
    return tuple(dict.fromkeys(one for one in found if one is not None))


def _dropped(row: Share, one: HazardClass, declared: tuple[str, ...]) -> Dropped | None:
    limit = cut_off(row.ingredient, one)
    if row.percent is None or limit is None or not reaches(row.percent, limit):
        return None
    return (
        None if covered_by(one.code, declared) else Dropped(row.ingredient.name, one.code, row.percent, limit)
    )


def cut_off(one: Ingredient, of: HazardClass) -> float | None:
    """From which share (% w/w) this ingredient alone gives a mixture its statement; None if a test decides.

    Its specific limit where it has one; for acute toxicity 100 x estimate / limit of the category.
    """
    if of.code.startswith("H2"):
        return None
    if of.short == "Acute Tox.":
        return _acute_cut_off(one, of)
    if of.short in _SUMMED:
        return _SUMMED[of.short](one)
    if of.short.startswith("Aquatic"):
        m = (one.m_acute if of.short == ACUTE else one.m_chronic) if of.category == "1" else 1.0
        return summed_limit("Aquatic").limit / (m or 1.0)
    own = one.lowest_limit(of.short, (of.category,))
    return own if own is not None else _generic(of)


_SUMMED = {
    "Skin Corr.": corrosion_limit,
    "Skin Irrit.": irritation_limit,
    "Eye Dam.": damage_limit,
    "Eye Irrit.": eye_irritation_limit,
}


def _generic(of: HazardClass) -> float | None:
    if of.short == "STOT SE" and of.category == "3":
        return summed_limit("STOT SE 3").limit
    if of.short == "Asp. Tox.":
        return summed_limit("Asp. Tox. 1").limit
    found = single_limit(of.short, of.category, "clp")
    return found.limit if found else None


_INHALED = ("vapour", "mist")


def _acute_cut_off(one: Ingredient, of: HazardClass) -> float | None:
    routes = {"H30": ("oral",), "H31": ("dermal",), "H33": ("gas",) if one.gas else ("vapour", "mist")}[
        of.code[:3]
    ]
    if not of.category or int(of.category) > 4:
        return None
    at = int(of.category) - 1
    own: dict[str, float] = {ate.route: ate.value for ate in one.ate if ate.route in routes}
    tables = [(route, acute_table(route)) for route in own or routes]
    return min(100 * own.get(route, table.points[at]) / table.limits[at] for route, table in tables)
