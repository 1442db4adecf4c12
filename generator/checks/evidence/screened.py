"""What the composition of a mixture implies beside what it declares, worked out once."""

from dataclasses import dataclass
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
from generator.study import LabStudy
from generator.study.composition import composition_of


@dataclass(frozen=True, slots=True)
class _Screened:
    """What a mixture drops and implies, or why neither can be said."""

    dropped: tuple[Dropped, ...] = ()
    implied: tuple[HazardClass, ...] = ()
    problems: tuple[ScreeningProblem, ...] = ()


def dropped(study: LabStudy, id: str) -> tuple[Dropped, ...]:
    """Statements of ingredients that a mixture does not carry; none where it cannot be worked out."""
    return study.answers.of(study, _in_lab, id).dropped


def implied(study: LabStudy, id: str) -> tuple[HazardClass, ...]:
    """Classes that the composition implies and nobody declared, without those that a graver one covers."""
    return study.answers.of(study, _in_lab, id).implied


def not_screened(study: LabStudy, id: str) -> tuple[ScreeningProblem, ...]:
    """Why a mixture cannot be worked out; none where it can, or where something is silent already."""
    return study.answers.of(study, _in_lab, id).problems


def _in_lab(study: LabStudy, id: str) -> _Screened:
    composition = _judged(study.lab, id)
    return _screened(composition, _declared(study.lab, id)) if composition else _Screened()


@lru_cache(maxsize=512)
def _screened(composition: Composition, declared: tuple[str, ...]) -> _Screened:
    screening = screen(composition)
    lost = dropped_statements(composition, declared)
    if isinstance(screening, NotScreened) or isinstance(lost, NotScreened):
        return _Screened(problems=screening.problems if isinstance(screening, NotScreened) else ())
    found = undeclared_classes(screening, declared)
    kept = shown_codes(tuple(one.code for one in found))
    return _Screened(lost, tuple(one for one in found if one.code in kept))


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
