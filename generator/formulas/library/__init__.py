"""The formulas that come with the tool, by field."""

from functools import cache

from generator.formulas.errors import FormulaError
from generator.formulas.formula import Formula
from generator.formulas.library.inspection import BARREL_RESISTANCE, COUPON_THICKNESS
from generator.formulas.library.plating import PLATING_AREA, PLATING_CURRENT, PLATING_TIME
from generator.formulas.library.signs import LETTER_HEIGHT, SIGNAL_HEIGHT

LIBRARY: tuple[Formula, ...] = (
    PLATING_AREA,
    PLATING_CURRENT,
    PLATING_TIME,
    BARREL_RESISTANCE,
    COUPON_THICKNESS,
    LETTER_HEIGHT,
    SIGNAL_HEIGHT,
)


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
