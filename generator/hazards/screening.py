"""The screening of a mixture from its composition by the GHS mixture rules, with its arithmetic."""

from dataclasses import dataclass

from generator.hazards.acute import screen_acute
from generator.hazards.aquatic import screen_aquatic
from generator.hazards.classification import HazardClass
from generator.hazards.composition import Composition, Ingredient, NotScreened
from generator.hazards.density import DensityUsed
from generator.hazards.extremes import ph_unknown
from generator.hazards.eyes import screen_eyes
from generator.hazards.labels import pictograms, signal_word
from generator.hazards.long_term import screen_long_term
from generator.hazards.organ import screen_organ
from generator.hazards.shares import Share, Shares, shares_of
from generator.hazards.skin import screen_skin
from generator.hazards.steps import Finding, Part, Step, Unknown, joined, number, reaches
from generator.hazards.stronger import shown_codes
from generator.hazards.tables import source_of

CAUTION = (
    "A screening aid for a lab's own mixtures; the supplier's sheet, the safety office and the law in force "
    "decide. It sees only what was declared, and does not replace local codes or licensed practice."
)


@dataclass(frozen=True, slots=True)
class Screening:
    """What the composition implies: classes, statements, label elements; and what is not known.

    `steps` are the rows of arithmetic in the order of the GHS; `shares` say how each % w/w was worked out.
    """

    name: str
    classes: tuple[HazardClass, ...]
    statements: tuple[str, ...]
    supplements: tuple[str, ...]
    signal: str
    pictograms: tuple[str, ...]
    unknown: tuple[Unknown, ...]
    steps: tuple[Step, ...]
    shares: tuple[Share, ...]
    density: DensityUsed | None
    source: str
    caution: str = CAUTION


def screen(composition: Composition) -> Screening | NotScreened:
    """Screen a mixture, or say why that cannot be done; what needs a test is listed as unknown.

    Covers UN GHS 3.1 to 3.10, 4.1 and 5.1. Physical hazards need a test and are never implied here.
    """
    shares = shares_of(composition)
    if isinstance(shares, NotScreened):
        return shares
    parts = tuple(Part(row.ingredient, row.percent) for row in shares.rows if row.percent is not None)
    found = joined(
        (
            screen_acute(parts, shares.unnamed),
            screen_skin(parts, composition),
            screen_eyes(parts, composition),
            screen_long_term(parts, composition),
            screen_organ(parts, composition),
            screen_aquatic(parts),
            _supplements(parts),
            Finding(unknown=_unknown(composition, shares)),
        )
    )
    return _screening(composition, shares, found)


def _screening(composition: Composition, shares: Shares, found: Finding) -> Screening:
    classes = _gravest_inhaled(found.classes)
    statements = shown_codes(tuple(one.code for one in classes))
    return Screening(
        composition.name,
        classes,
        tuple(sorted(statements)),
        tuple(sorted(found.supplements)),
        signal_word(statements),
        pictograms(statements),
        found.unknown,
        found.steps,
        shares.rows,
        shares.density,
        source_of("limits"),
    )


def _gravest_inhaled(classes: tuple[HazardClass, ...]) -> tuple[HazardClass, ...]:
    """Gas, vapour and mist are worked apart; where several end in a class, the gravest stands."""
    inhaled = [one for one in classes if one.code in ("H330", "H331", "H332")]
    gravest = min(inhaled, key=lambda one: one.category, default=None)
    return tuple(one for one in classes if one not in inhaled or one is gravest)


def _supplements(parts: tuple[Part, ...]) -> Finding:
    """EUH statements from their own limit where they have one; the others are passed on as a question."""
    reached: list[str] = []
    unknown: list[Unknown] = []
    for part in parts:
        limits = {one.hazard_class.code: one.low for one in part.ingredient.limits}
        for code in part.ingredient.supplements:
            if code not in limits:
                unknown.append(
                    Unknown(part.name, f"{code} has no limit of its own: ask whether it holds here")
                )
            elif reaches(part.percent, limits[code]):
                reached.append(code)
    return Finding(supplements=tuple(reached), unknown=tuple(unknown))


def _unknown(composition: Composition, shares: Shares) -> tuple[Unknown, ...]:
    rows: list[Unknown] = list(ph_unknown(composition))
    if shares.density is not None and shares.density.estimated:
        rows.append(Unknown("density", shares.density.says))
    if shares.unnamed:
        rows.append(Unknown("composition", f"{number(shares.unnamed)} % of the mixture is not named"))
    for row in shares.rows:
        rows += _about(row)
    rows.append(Unknown("physical hazards", _physical(composition)))
    return tuple(rows)


def _about(row: Share) -> list[Unknown]:
    one = row.ingredient
    found = [Unknown(one.name, note) for note in one.notes]
    if row.percent is None:
        found.append(Unknown(one.name, row.says))
    if one.classes is None:
        found.append(Unknown(one.name, "its hazards are not declared"))
    if any(held.minimum for held in one.classes or ()):
        found.append(Unknown(one.name, "a class is a minimum in Annex VI (marked *): it may be graver"))
    if one.evidence is not None and one.classes:
        found.append(Unknown(one.name, f"classes and limits: {one.evidence.words}"))
    if one.amount is not None and one.amount.unit == "parts":
        found.append(Unknown(one.name, "parts are read as parts by weight"))
    return found


def _physical(composition: Composition) -> str:
    brings = [text for one in composition.ingredients if (text := _physical_of(one))]
    tail = f"; the ingredients bring {', '.join(brings)}" if brings else ""
    return f"fire, oxidation, gas and corrosion of metals need a test, not a sum{tail}"


def _physical_of(one: Ingredient) -> str:
    codes = [held.code for held in one.classes or () if held.code.startswith("H2")]
    return f"{' '.join(codes)} ({one.name})" if codes else ""
