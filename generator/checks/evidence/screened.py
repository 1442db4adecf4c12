"""What the composition of a mixture implies beside what it declares, worked out once."""

from functools import lru_cache

from generator.checks.evidence.contents import mixture, substance
from generator.hazards import (
    Composition,
    Dropped,
    HazardClass,
    NotScreened,
    ScreeningProblem,
    dropped_statements,
    screen,
    shown_codes,
    undeclared_classes,
)
from generator.model import Lab
from generator.study.composition import composition_of
from generator.study.once import once_a_lab


@once_a_lab
def dropped(lab: Lab, id: str) -> tuple[Dropped, ...]:
    """Statements of ingredients that a mixture does not carry; none where it cannot be worked out."""
    composition = _judged(lab, id)
    return _dropped(composition, _declared(lab, id)) if composition else ()


@once_a_lab
def implied(lab: Lab, id: str) -> tuple[HazardClass, ...]:
    """Classes that the composition implies and nobody declared, without those that a graver one covers."""
    composition = _judged(lab, id)
    found = _implied(composition, _declared(lab, id)) if composition else ()
    kept = shown_codes(tuple(one.code for one in found))
    return tuple(one for one in found if one.code in kept)


def not_screened(lab: Lab, id: str) -> tuple[ScreeningProblem, ...]:
    """Why a mixture cannot be worked out; none where it can, or where something is silent already."""
    composition = _judged(lab, id)
    return _not_screened(composition) if composition else ()


@lru_cache(maxsize=512)
def _not_screened(composition: Composition) -> tuple[ScreeningProblem, ...]:
    found = screen(composition)
    return found.problems if isinstance(found, NotScreened) else ()


@lru_cache(maxsize=512)
def _dropped(composition: Composition, declared: tuple[str, ...]) -> tuple[Dropped, ...]:
    found = dropped_statements(composition, declared)
    return () if isinstance(found, NotScreened) else found


@lru_cache(maxsize=512)
def _implied(composition: Composition, declared: tuple[str, ...]) -> tuple[HazardClass, ...]:
    screening = screen(composition)
    return () if isinstance(screening, NotScreened) else undeclared_classes(screening, declared)


def _declared(lab: Lab, id: str) -> tuple[str, ...]:
    found = mixture(lab, id)
    return tuple(map(str, found.hazards)) if found else ()


def _judged(lab: Lab, id: str) -> Composition | None:
    """The composition of a mixture whose own hazards and whose ingredients' hazards are stated."""
    found = mixture(lab, id)
    if found is None or not (found.hazards or found.not_classified):
        return None
    parts = [mixture(lab, part) or substance(lab, part) for part in found.made_of]
    silent = any(part is None or not (part.hazards or part.not_classified) for part in parts)
    return None if silent else composition_of(lab, id)
