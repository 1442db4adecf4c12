"""The formulas that come with the tool, by field."""

from functools import cache

from generator.formulas.errors import FormulaError
from generator.formulas.formula import Formula
from generator.formulas.library import (
    acid,
    alignment,
    anodising,
    baths,
    charge,
    corrections,
    holes,
    inspection,
    planning,
    plating,
    rinsing,
    sampling,
    signs,
    solutions,
    supply,
    titration,
    tracks,
    waste,
)

FIELDS: tuple[tuple[str, tuple[Formula, ...]], ...] = (
    ("Plating", (plating.PLATING_AREA, plating.PLATING_CURRENT, plating.PLATING_TIME)),
    (
        "Charge",
        (charge.THICKNESS_FROM_CHARGE, charge.HOLE_THICKNESS, charge.COPPER_USED, charge.ADDITIVE_BY_CHARGE),
    ),
    ("Holes", (holes.DRILL_SIZE, holes.ASPECT_RATIO, holes.SMALLEST_HOLE, holes.ANNULAR_RING)),
    ("Foil and tracks", (tracks.FOIL_THICKNESS, tracks.TRACK_WIDTH)),
    (
        "Baths",
        (
            baths.MAKE_UP_SOLID,
            baths.MAKE_UP_LIQUID,
            baths.MIXING_HEAT,
            baths.RAISE_STRENGTH,
            baths.EVAPORATION_TOP_UP,
            corrections.COPPER_IN_SALT,
            corrections.COPPER_CORRECTION,
            corrections.COPPER_DILUTION,
            corrections.CHLORIDE_CORRECTION,
        ),
    ),
    (
        "Solutions",
        (
            solutions.DILUTION,
            solutions.DILUTION_BY_MASS,
            solutions.DILUTION_BY_DENSITY,
            solutions.LABEL_TO_MOLARITY,
            acid.ACID_DENSITY,
        ),
    ),
    ("Titration", (titration.TITRATION, titration.COPPER_BY_EDTA, titration.ACID_BY_BASE)),
    (
        "Rinsing",
        (rinsing.DRAG_OUT, rinsing.RINSE_RATIO, rinsing.RINSE_WATER, rinsing.CONTAMINATION_BUDGET),
    ),
    (
        "Inspection",
        (
            inspection.BARREL_RESISTANCE,
            inspection.COPPER_FROM_RESISTANCE,
            inspection.COUPON_THICKNESS,
            inspection.ETCH_RATE,
            sampling.HOLES_TO_SAMPLE,
        ),
    ),
    ("Alignment", (alignment.REGISTRATION_ERROR, alignment.BOARD_STRETCH, alignment.BOARD_ROTATION)),
    ("Supply", (supply.ANODE_RATIO, supply.SUPPLY_HEADROOM, supply.HEATER_WARM_UP)),
    ("Waste and spills", (waste.CONTAINER_RUNS, waste.NEUTRALISING_ESTIMATE)),
    ("Anodising", (anodising.ANODISE_TIME, anodising.ANODISE_CHARGE)),
    ("Signs", (signs.LETTER_HEIGHT, signs.SIGNAL_HEIGHT)),
    ("Planning", (planning.SESSION_CLOCK, planning.LATEST_START, planning.STAGGER)),
)

LIBRARY: tuple[Formula, ...] = tuple(formula for _, formulas in FIELDS for formula in formulas)


@cache
def by_name() -> dict[str, Formula]:
    """The library by name."""
    return {formula.name: formula for formula in LIBRARY}


def find_formula(name: str) -> Formula:
    """The formula of this name; FormulaError with the nearest name where there is none."""
    formulas = by_name()
    if name in formulas:
        return formulas[name]
    from difflib import get_close_matches

    near = get_close_matches(name, formulas, n=1)
    raise FormulaError(f"there is no formula `{name}`", f"write `{near[0]}`" if near else "look in the list")
