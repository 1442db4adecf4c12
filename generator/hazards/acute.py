"""Acute toxicity of a mixture: the estimate by route (UN GHS 3.1.3.6, formulas 3.1.3.6.1 and 3.1.3.6.2.3)."""

from dataclasses import dataclass

from generator.hazards.classification import HazardClass
from generator.hazards.composition import Ingredient, Route
from generator.hazards.evidence import weakest
from generator.hazards.limit_table import AcuteTable, acute_relevant, acute_table, acute_unknown
from generator.hazards.steps import Finding, Part, Step, Term, Unknown, joined, number, reaches

ROUTES: tuple[Route, ...] = ("oral", "dermal", "gas", "vapour", "mist")

_ROUTE_OF = {
    "H300": "oral",
    "H301": "oral",
    "H302": "oral",
    "H310": "dermal",
    "H311": "dermal",
    "H312": "dermal",
}
_INHALED = ("H330", "H331", "H332")
_NAMES = {
    "oral": "by mouth",
    "dermal": "through the skin",
    "gas": "breathed in as gas",
    "vapour": "breathed in as vapour",
    "mist": "breathed in as dust or mist",
}


@dataclass(frozen=True, slots=True)
class _Estimate:
    value: float
    category: str
    says: str
    memory: bool


def screen_acute(parts: tuple[Part, ...], unnamed: float = 0.0) -> Finding:
    """Every route that an ingredient is known to be toxic by; `unnamed`: the share (%) that nobody named."""
    return joined(tuple(_screen_route(route, parts, unnamed) for route in ROUTES))


def _screen_route(route: Route, parts: tuple[Part, ...], unnamed: float) -> Finding:
    table = acute_table(route)
    estimates = [(part, _estimate(part.ingredient, route, table)) for part in parts]
    known = [(part, own) for part, own in estimates if own is not None]
    counted = [
        (part, found) for part, found in known if reaches(part.percent, acute_relevant(found.category))
    ]
    # An ingredient of which nothing is known counts from 1 % (3.1.3.6.2.2).
    blank = unnamed + sum(part.percent for part in parts if part.percent >= 1 and _is_unknown(part, route))
    unsure = tuple(
        Unknown(part.name, f"{code} does not say whether category 1 or 2; the graver is used")
        for part, _ in counted
        for code in (one.code for one in part.ingredient.classes or () if one.unsure)
        if _routes_of(code, part.ingredient, route)
    )
    if not counted:
        return Finding(
            unknown=(_unknown_share(route, blank),) if blank >= 1 and route in ("oral", "dermal") else ()
        )
    return _sum(route, table, counted, blank, unsure)


def _sum(
    route: Route,
    table: AcuteTable,
    counted: list[tuple[Part, _Estimate]],
    blank: float,
    unsure: tuple[Unknown, ...],
) -> Finding:
    terms = tuple(
        Term(part.name, f"{number(part.percent)} ÷ {own.says}", part.percent / own.value)
        for part, own in counted
    )
    total = sum(term.value for term in terms)
    top = 100 - blank if blank > acute_unknown() else 100.0
    mixture = top / total
    outcome = _category(mixture, table)
    found = HazardClass("Acute Tox.", str(outcome), table.codes[outcome - 1]) if outcome else None
    clause = "3.1.3.6.2.3" if blank > acute_unknown() else "3.1.3.6.1"
    says = f"{number(top)} ÷ {number(total)} = {number(mixture)} {table.unit}: " + (
        f"{found.name} {found.code}" if found else "not classified by this route"
    )
    memory = (table.points_evidence,) if any(own.memory for _, own in counted) else ()
    evidence = weakest((table.limits_evidence, *memory))
    limit = f"category 4 up to {number(table.limits[-1])} {table.unit}"
    step = Step(f"Acute toxicity {_NAMES[route]}", clause, terms, total, limit, says, evidence)
    unknown = (*unsure, *((_unknown_share(route, blank),) if blank >= 1 else ()))
    return Finding((found,) if found else (), (step,), unknown)


def _unknown_share(route: Route, blank: float) -> Unknown:
    text = f"{number(blank)} % of the mixture consists of ingredients of unknown toxicity {_NAMES[route]}"
    return Unknown("acute toxicity", text)


def _is_unknown(part: Part, route: Route) -> bool:
    one = part.ingredient
    if any(ate.route == route for ate in one.ate):
        return False
    return one.classes is None or route in one.no_data


def _estimate(one: Ingredient, route: Route, table: AcuteTable) -> _Estimate | None:
    """The ingredient's own estimate for a route, else the converted point of its category (table 3.1.2)."""
    for ate in one.ate:
        if ate.route == route:
            return _Estimate(ate.value, str(_category(ate.value, table) or ""), number(ate.value), False)
    for found in one.classes or ():
        if found.short == "Acute Tox." and _routes_of(found.code, one, route) and found.category:
            point = table.points[int(found.category) - 1]
            return _Estimate(point, found.category, f"{number(point)} (category {found.category})", True)
    return None


def _routes_of(code: str, one: Ingredient, route: Route) -> bool:
    """Whether a statement speaks of a route; one of inhalation that does not say its form counts in each."""
    if code in _ROUTE_OF:
        return _ROUTE_OF[code] == route
    if code not in _INHALED or any(ate.route in ("gas", "vapour", "mist") for ate in one.ate):
        return False
    return route == "gas" if one.gas else route in ("vapour", "mist")


def _category(value: float, table: AcuteTable) -> int:
    """Category 1 to 4 by table 3.1.1, or 0 above them all."""
    return next((at for at, limit in enumerate(table.limits, start=1) if value <= limit), 0)
