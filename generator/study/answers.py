"""What was worked out about a lab, kept: a lab is frozen, so that an answer stands."""

from collections.abc import Callable, Hashable
from typing import Any, TypeVar

Answer = TypeVar("Answer")


class Answers:
    """Answers by the work that gives them and what it was asked; the work looks at nothing but the lab."""

    def __init__(self) -> None:
        self._known: dict[Any, Any] = {}

    def of(self, study: object, work: Callable[..., Answer], *asked: Hashable) -> Answer:
        """The answer, worked out from the study of the lab when it is first asked for."""
        if (work, asked) not in self._known:
            self._known[work, asked] = work(study, *asked)
        answer: Answer = self._known[work, asked]
        return answer
