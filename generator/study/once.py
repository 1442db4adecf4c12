"""Answers about a lab that are worked out once: a lab is frozen, so the same lab has the same answer."""

from collections.abc import Callable
from functools import lru_cache, wraps
from typing import TypeVar, TypeVarTuple

from generator.model import Lab

_Asked = TypeVarTuple("_Asked")
_Answer = TypeVar("_Answer")


class _This:
    """This very lab as a key; two labs that say the same are two."""

    __slots__ = ("lab",)

    def __init__(self, lab: Lab) -> None:
        self.lab = lab

    def __hash__(self) -> int:
        return id(self.lab)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _This) and self.lab is other.lab


def once_a_lab(work: Callable[[Lab, *_Asked], _Answer]) -> Callable[[Lab, *_Asked], _Answer]:
    """A function of a lab and some texts that works each answer out once; it must give what cannot change.

    A build looks at each procedure's lab in turn, and what was said of one is not asked for again.
    """

    @lru_cache(maxsize=8)
    def answers(this: _This) -> dict[tuple[*_Asked], _Answer]:  # noqa: ARG001 - the key alone
        return {}

    @wraps(work)
    def once(lab: Lab, *asked: *_Asked) -> _Answer:
        known = answers(_This(lab))
        if asked not in known:
            known[asked] = work(lab, *asked)
        return known[asked]

    return once
