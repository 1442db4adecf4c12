"""Answers that are worked out once: a lab or a step is frozen, so the same one has the same answer."""

from collections.abc import Callable
from functools import lru_cache, wraps
from typing import Generic, TypeVar, TypeVarTuple

from generator.model import Lab, Step

_Asked = TypeVarTuple("_Asked")
_Answer = TypeVar("_Answer")
_Noun = TypeVar("_Noun")


class _This(Generic[_Noun]):
    """This very noun as a key; two that say the same are two."""

    __slots__ = ("noun",)

    def __init__(self, noun: _Noun) -> None:
        self.noun = noun

    def __hash__(self) -> int:
        return id(self.noun)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _This) and self.noun is other.noun


def once_a_lab(work: Callable[[Lab, *_Asked], _Answer]) -> Callable[[Lab, *_Asked], _Answer]:
    """A function of a lab and some texts that works each answer out once; it must give what cannot change.

    A build looks at each procedure's lab in turn, and what was said of one is not asked for again.
    """

    @lru_cache(maxsize=8)
    def answers(this: _This[Lab]) -> dict[tuple[*_Asked], _Answer]:  # noqa: ARG001 - the key alone
        return {}

    @wraps(work)
    def once(lab: Lab, *asked: *_Asked) -> _Answer:
        known = answers(_This(lab))
        if asked not in known:
            known[asked] = work(lab, *asked)
        return known[asked]

    return once


def once_a_step(work: Callable[[Step], _Answer]) -> Callable[[Step], _Answer]:
    """A function of a step alone that works the answer out once; it must give what cannot change.

    A step that no edit touched is the same one when its procedure is read again.
    """

    @lru_cache(maxsize=1024)
    def answer(this: _This[Step]) -> _Answer:
        return work(this.noun)

    @wraps(work)
    def once(step: Step) -> _Answer:
        return answer(_This(step))

    return once
