"""Answers that are worked out once: a lab or a step is frozen, so the same one has the same answer."""

from collections.abc import Callable
from functools import wraps
from typing import Generic, TypeVar, TypeVarTuple

from generator.model import Lab, Step

_Asked = TypeVarTuple("_Asked")
_Answer = TypeVar("_Answer")
_Noun = TypeVar("_Noun")
_LABS = 4
_STEPS = 512


class _Answers(Generic[_Noun, _Answer]):
    """Answers by this very noun; two nouns that say the same are two.

    `lately` has the last so many by `id()`, and before it were as many again; older ones are let go. With its
    answer stands the noun, so that no other can come to lie where it lay.
    """

    __slots__ = ("_before", "_most", "_work", "lately")

    def __init__(self, work: Callable[[_Noun], _Answer], most: int) -> None:
        self._work = work
        self._most = most
        self._before: dict[int, tuple[_Noun, _Answer]] = {}
        self.lately: dict[int, tuple[_Noun, _Answer]] = {}

    def find(self, noun: _Noun) -> tuple[_Noun, _Answer]:
        """The noun and its answer, of before or worked out now."""
        found = self._before.get(id(noun)) or (noun, self._work(noun))
        if len(self.lately) >= self._most:
            self._before, self.lately = self.lately, {}
        self.lately[id(noun)] = found
        return found


def once_a_lab(work: Callable[[Lab, *_Asked], _Answer]) -> Callable[[Lab, *_Asked], _Answer]:
    """A function of a lab and some texts that works each answer out once; it must give what cannot change.

    A build looks at each procedure's lab in turn, and what was said of one is not asked for again.
    """

    def nothing_yet(_: Lab) -> dict[tuple[*_Asked], _Answer]:
        return {}

    answers = _Answers(nothing_yet, _LABS)

    @wraps(work)
    def once(lab: Lab, *asked: *_Asked) -> _Answer:
        known = (answers.lately.get(id(lab)) or answers.find(lab))[1]
        if asked not in known:
            known[asked] = work(lab, *asked)
        return known[asked]

    return once


def once_a_step(work: Callable[[Step], _Answer]) -> Callable[[Step], _Answer]:
    """A function of a step alone that works the answer out once; it must give what cannot change.

    A step that no edit touched is the same one when its procedure is read again.
    """
    answers = _Answers(work, _STEPS)

    @wraps(work)
    def once(step: Step) -> _Answer:
        return (answers.lately.get(id(step)) or answers.find(step))[1]

    return once
