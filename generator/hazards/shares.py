"""Every ingredient's share of a mixture in % w/w, from the units that authors use."""

from dataclasses import dataclass

from generator.hazards.composition import Composition, Ingredient, NotScreened, ScreeningProblem
from generator.hazards.density import DensityUsed, density_used, grams_per_litre
from generator.hazards.molar import mass_of_whole
from generator.problems import NewelError
from generator.units import UNITS, Quantity

# Rounding of an author's own figures, not a licence to be over.
_OVER = 0.01


@dataclass(frozen=True, slots=True)
class Share:
    """An ingredient with its share in % w/w (None: not known and not needed) and how it was worked out."""

    ingredient: Ingredient
    percent: float | None
    says: str


@dataclass(frozen=True, slots=True)
class Shares:
    """All shares, the density used (None if none was needed), and what part of the mixture nobody named."""

    rows: tuple[Share, ...]
    density: DensityUsed | None
    unnamed: float


def shares_of(composition: Composition) -> Shares | NotScreened:
    """Shares of all ingredients, or why they cannot be worked out: nothing is guessed."""
    rests = [one for one in composition.ingredients if one.amount is None]
    problems = list(_nonsense(composition, rests))
    if problems:
        return NotScreened(composition.name, tuple(problems))
    density = density_used(composition) if _wants_density(composition) else None
    recipe = _recipe_total(composition)
    rows: list[Share | ScreeningProblem] = [
        _row(one, density, recipe) for one in composition.ingredients if one.amount is not None
    ]
    problems = [row for row in rows if isinstance(row, ScreeningProblem)]
    if problems:
        return NotScreened(composition.name, tuple(problems))
    return _with_rest(composition, tuple(row for row in rows if isinstance(row, Share)), density)


def _nonsense(composition: Composition, rests: list[Ingredient]) -> list[ScreeningProblem]:
    found = []
    if not composition.ingredients:
        found.append(ScreeningProblem("", "It is made of nothing.", "Write what it is made of.", True))
    if len(rests) > 1:
        names = " and ".join(one.name for one in rests)
        found.append(
            ScreeningProblem(
                rests[1].name, f"{names} are both the rest.", "Give all but one an amount.", True
            )
        )
    for one in composition.ingredients:
        if one.amount is not None and not 0 <= one.amount.number < float("inf"):
            found.append(
                ScreeningProblem(
                    one.name, f"{one.name} has an amount below zero.", "Write what goes in.", True
                )
            )
    given = composition.density
    if given is not None and not 0 < given.to("kg/L").number < 25:
        found.append(
            ScreeningProblem(
                "", f"{given.number:g} {given.unit} is no liquid's density.", "Weigh 1 L of it.", True
            )
        )
    return found


def _wants_density(composition: Composition) -> bool:
    per_litre = {UNITS["g/L"].dimension, UNITS["mol/L"].dimension}
    return any(
        one.amount is not None and (one.amount.dimension in per_litre or one.amount.unit in ("mL/L", "% v/v"))
        for one in composition.ingredients
    )


_MASS, _VOLUME = UNITS["g"].dimension, UNITS["mL"].dimension


def _grams(one: Ingredient) -> float | None:
    """Grams, or parts by weight, of an ingredient of a recipe."""
    amount = one.amount
    if amount is None:
        return None
    if amount.unit == "parts":
        return amount.number
    if amount.dimension == _MASS:
        return amount.to("g").number
    if amount.dimension == _VOLUME and one.density is not None:
        return amount.to("mL").number * one.density.to("kg/L").number
    return None


def _recipe_total(composition: Composition) -> float | None:
    """Total of a recipe by weight; None unless every ingredient is weighed, or every one is in parts."""
    grams = [_grams(one) for one in composition.ingredients]
    known = [g for g in grams if g is not None]
    parts = [one.amount is not None and one.amount.unit == "parts" for one in composition.ingredients]
    if len(known) < len(grams) or (any(parts) and not all(parts)):
        return None
    return sum(known) or None


def _row(one: Ingredient, density: DensityUsed | None, recipe: float | None) -> Share | ScreeningProblem:
    try:
        found = _bought_or_pure(one, density, recipe)
    except NewelError as error:
        return ScreeningProblem(one.name, str(error), error.hint)
    if isinstance(found, ScreeningProblem):
        if one.classes == ():
            return Share(one, None, "share not known; it is stated as not classified, so no sum needs it")
        return found
    return found


def _bought_or_pure(
    one: Ingredient, density: DensityUsed | None, recipe: float | None
) -> Share | ScreeningProblem:
    amount = one.amount
    assert amount is not None
    percent, says = _percent(one, amount, density, recipe)
    if percent is None:
        return _missing(one, amount, says)
    as_bought = not one.counted_as and amount.dimension != UNITS["mol/L"].dimension
    if one.counted_as and one.formula:
        factor = mass_of_whole(one.counted_as, one.formula)
        if abs(factor - 1) > 1e-9:
            percent, says = (
                percent * factor,
                f"{says} × {factor:.4g} from {one.counted_as} to {one.formula}",
            )
    strength = one.strength.to("% w/w").number / 100 if one.strength is not None else 1.0
    if as_bought and one.of_pure and strength != 1.0:
        pure = percent * strength
        return Share(one, pure, f"{says} × {strength:.3g} strength = {pure:.4g} %")
    if not as_bought and not one.of_pure and strength:
        percent /= strength
    return Share(one, percent, f"{says} = {percent:.4g} %")


def _percent(
    one: Ingredient, amount: Quantity, density: DensityUsed | None, recipe: float | None
) -> tuple[float | None, str]:
    if amount.unit in ("% w/w", "ppm"):
        return amount.to("% w/w").number, f"{amount.number:g} {amount.unit} by weight"
    grams = _grams(one)
    if grams is not None and recipe is not None:
        unit = "parts by weight" if amount.unit == "parts" else "g"
        return 100 * grams / recipe, f"{grams:.4g} of {recipe:.4g} {unit}"
    per_litre = grams_per_litre(amount, one.formula, one.density)
    if per_litre is None or density is None:
        return None, "density" if per_litre is not None else ""
    kilos = density.value.number
    return per_litre / (10 * kilos), f"{per_litre:.4g} g/L ÷ (10 × {kilos:.4g} kg/L)"


def _missing(one: Ingredient, amount: Quantity, what: str) -> ScreeningProblem:
    if what == "density":
        text = "The density of the mixture is not known and cannot be estimated."
        return ScreeningProblem("", text, "Weigh 1 L of it and write its density.")
    if amount.unit == "%":
        text = f"{one.name}: {amount.number:g} % may be by weight or by volume."
        return ScreeningProblem(one.name, text, "Write % w/w or % v/v.")
    if amount.dimension == UNITS["mol/L"].dimension:
        text = f"{one.name} has no formula to weigh a mole by."
        return ScreeningProblem(one.name, text, "Give it in g/L.")
    if amount.unit in ("mL/L", "% v/v") or amount.dimension == _VOLUME:
        text = f"{one.name} is given by volume and its density is not known."
        return ScreeningProblem(one.name, text, f"Write the density of {one.name} from its sheet.")
    text = f"{one.name}: {amount.number:g} {amount.unit} beside the other amounts gives no share."
    return ScreeningProblem(one.name, text, "Give every ingredient in g/L, or every one by weight.")


def _with_rest(
    composition: Composition, rows: tuple[Share, ...], density: DensityUsed | None
) -> Shares | NotScreened:
    total = sum(row.percent or 0.0 for row in rows)
    if total > 100 + _OVER:
        text = f"The ingredients come to {total:.4g} %, more than the whole."
        problem = ScreeningProblem("", text, "Correct an amount or the density.", True)
        return NotScreened(composition.name, (problem,))
    left = max(0.0, 100.0 - total)
    rests = tuple(one for one in composition.ingredients if one.amount is None)
    rest = tuple(Share(one, left, f"the rest = {left:.4g} %") for one in rests)
    at = {id(row.ingredient): row for row in (*rows, *rest)}
    ordered = tuple(at[id(one)] for one in composition.ingredients)
    return Shares(ordered, density, 0.0 if rest or left <= _OVER else left)
