"""The names that a lab's own formula may use at one place of its text."""

import ast
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from generator.formulas.symbols import RowSymbol, Symbol
from generator.formulas.tape import Node

Term = Symbol | RowSymbol | Node
DEEPEST = 100
LONGEST = 3000


def _budget() -> Iterator[int]:
    return iter(range(LONGEST))


@dataclass(frozen=True, slots=True)
class Scope:
    """The names that an expression may use: terms and the file's own functions; how deep it stands.

    `fixed` holds the file's own numbers, known inside every function of it; `left` runs out, because
    functions that call each other twice would otherwise grow without end.
    """

    terms: Mapping[str, Term]
    functions: Mapping[str, ast.FunctionDef] = field(default_factory=dict)
    depth: int = 0
    fixed: Mapping[str, Term] = field(default_factory=dict)
    left: Iterator[int] = field(default_factory=_budget)

    def with_terms(self, terms: Mapping[str, Term]) -> "Scope":
        """The scope one level further in, with these terms and no others."""
        return Scope(terms, self.functions, self.depth + 1, self.fixed, self.left)

    def inside(self, **terms: Term) -> "Scope":
        """The scope of a lambda."""
        return self.with_terms({**self.terms, **terms})
