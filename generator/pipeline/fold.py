"""The first cause only: what follows from a cause already named is counted under it."""

from collections.abc import Iterable
from dataclasses import replace

from generator.problems import Cause, Problem


def fold(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Problems as found, each whose causes are all known folded under the first that names one of them."""
    kept: list[Problem] = []
    heads: dict[Cause, int] = {}
    follows: dict[int, int] = {}
    for problem in problems:
        if problem.causes and all(cause in heads for cause in problem.causes):
            head = heads[problem.causes[0]]
            follows[head] = follows.get(head, 0) + 1
            continue
        for cause in problem.causes:
            heads.setdefault(cause, len(kept))
        kept.append(problem)
    return tuple(replace(problem, follows=follows.get(index, 0)) for index, problem in enumerate(kept))
