"""A mixture of the lab as the screening takes it."""

from typing import cast

from generator.hazards import Composition, Ingredient, declared_ingredient, is_thin
from generator.model import Lab, Mixture, Portion, Substance, Text
from generator.study.once import once_a_lab
from generator.units import Window


def composition_of(lab: Lab, id: str) -> Composition | None:
    """The composition, or None where a mixture says nothing of it or names what is not declared."""
    found = lab.mixtures.get(Text(id))
    if found is None or not found.made_of:
        return None
    parts = [_ingredient(lab, str(name), portion) for name, portion in found.made_of.items()]
    known = tuple(part for part in parts if part is not None)
    if len(known) < len(parts):
        return None
    return Composition(
        id,
        known,
        density=found.density,
        ph=cast("Window | None", found.ph),
        thin=is_thin(found.viscosity) if found.viscosity else None,
    )


def _ingredient(lab: Lab, id: str, portion: Portion) -> Ingredient | None:
    bought = lab.substances.get(Text(id))
    if bought:
        return declared_ingredient(
            id,
            portion.amount,
            _codes(bought),
            cas=str(bought.cas or ""),
            counted_as=portion.counted_as,
            strength=bought.strength,
            density=bought.density,
            bought_mixture=bought.mixture,
        )
    made = lab.mixtures.get(Text(id))
    if made is None:
        return None
    return declared_ingredient(id, portion.amount, _codes(made), density=made.density, bought_mixture=True)


def _codes(noun: Substance | Mixture) -> tuple[str, ...] | None:
    """The declared statements; None where nothing is declared."""
    if not noun.hazards and not noun.not_classified:
        return None
    return tuple(map(str, noun.hazards))


@once_a_lab
def substances_in(lab: Lab, id: str) -> tuple[str, ...]:
    """Ids of the substances in a mixture, through mixtures of mixtures; a substance is itself."""
    seen: dict[str, None] = {}
    waiting = [id]
    while waiting:
        name = waiting.pop(0)
        if name not in seen:
            seen[name] = None
            found = lab.mixtures.get(Text(name))
            waiting += [str(part) for part in found.made_of] if found else []
    return tuple(name for name in seen if Text(name) in lab.substances)
