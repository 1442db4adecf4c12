"""The formulas that a lab can use: the library's and its own."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache

from generator.formulas import LIBRARY, Formula


def nearest_input(name: str, inputs: Iterable[str]) -> str:
    """A fix that names the nearest input of a formula."""
    names = sorted(set(inputs))
    close = get_close_matches(name, names, 1)
    if close:
        return f"did you mean `{close[0]}`?"
    return (
        f"use one of: {', '.join(names)}" if names else "delete the line, or name a formula under `formulas`"
    )


@cache
def _in_library() -> Mapping[str, Formula]:
    return {formula.name: formula for formula in LIBRARY}


@dataclass(frozen=True, slots=True)
class Known:
    """Library and lab's own formulas by name."""

    own: tuple[Formula, ...] = ()

    def all(self) -> Iterable[Formula]:
        """Every formula, the library's first."""
        return (*LIBRARY, *self.own)

    def find(self, name: str) -> Formula | None:
        """The formula of a name."""
        return _in_library().get(name) or next((own for own in self.own if own.name == name), None)

    def nearest(self, name: str) -> str:
        """A fix that names the nearest formula."""
        names = sorted(formula.name for formula in self.all())
        close = get_close_matches(name, names, 1)
        return f"did you mean `{close[0]}`?" if close else f"use one of: {', '.join(names)}"
