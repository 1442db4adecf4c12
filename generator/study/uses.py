"""What a procedure's steps reach, said in names alone: all that a rule of the whole lab asks of it."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Called:
    """A role to be called, by the name written, and the step that says so."""

    role: str
    step: str


@dataclass(frozen=True, slots=True)
class Uses:
    """Ids in the order met: `in_use` at places and in steps, `reached` with all that is inside them.

    Rules of the lab ask this of a thousand procedures, of which one was edited.
    """

    in_use: tuple[str, ...] = ()
    reached: tuple[str, ...] = ()
    calls: tuple[Called, ...] = ()
