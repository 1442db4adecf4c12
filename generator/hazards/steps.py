"""The arithmetic of a screening as rows to read: addends, sum, limit, outcome."""

from dataclasses import dataclass

from generator.hazards.classification import HazardClass
from generator.hazards.composition import Ingredient
from generator.hazards.evidence import Evidence

# A sum that is a rounding error under its limit is at the limit.
_NEAR = 1e-9


def reaches(value: float, limit: float) -> bool:
    """Whether a share or sum is at or over a limit; the limits of the GHS are all "at least"."""
    return value >= limit * (1 - _NEAR)


@dataclass(frozen=True, slots=True)
class Part:
    """An ingredient with its share in % w/w, where that is known."""

    ingredient: Ingredient
    percent: float

    @property
    def name(self) -> str:
        """Its name."""
        return self.ingredient.name


@dataclass(frozen=True, slots=True)
class Term:
    """One addend: the ingredient, the working as text ("16.38 ÷ 15"), and its value."""

    name: str
    working: str
    value: float


@dataclass(frozen=True, slots=True)
class Step:
    """One row: rule, clause, addends, their sum, the limit, what follows, how well the limit is known."""

    rule: str
    clause: str
    terms: tuple[Term, ...]
    total: float
    limit: str
    outcome: str
    evidence: Evidence

    @property
    def text(self) -> str:
        """The row in one line."""
        if not self.terms:
            return f"{self.rule}: {self.outcome}"
        terms = " + ".join(f"{term.working} ({term.name})" for term in self.terms)
        return f"{self.rule}: {terms} = {self.total:.4g}; {self.limit}: {self.outcome}"


@dataclass(frozen=True, slots=True)
class Unknown:
    """Something that the screening could not know, and why."""

    about: str
    why: str


@dataclass(frozen=True, slots=True)
class Finding:
    """What one part of the screening found."""

    classes: tuple[HazardClass, ...] = ()
    steps: tuple[Step, ...] = ()
    unknown: tuple[Unknown, ...] = ()
    supplements: tuple[str, ...] = ()


def joined(findings: tuple[Finding, ...]) -> Finding:
    """Several findings as one, in their order."""
    return Finding(
        tuple(dict.fromkeys(one for found in findings for one in found.classes)),
        tuple(step for found in findings for step in found.steps),
        tuple(dict.fromkeys(one for found in findings for one in found.unknown)),
        tuple(dict.fromkeys(one for found in findings for one in found.supplements)),
    )


def number(value: float) -> str:
    """A share or limit with four figures."""
    return f"{value:.4g}"


def not_classified(what: str) -> str:
    """The words for an outcome under its limit."""
    return f"not classified for {what}"
