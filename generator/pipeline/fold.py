"""The first cause only: what follows from a cause already named is counted under it."""

from collections.abc import Iterable
from dataclasses import replace

from generator.problems import Cause, Level, Problem


def fold(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Problems in the order walked, each whose causes are all known folded under the first that names one of them.

    A warning folds under an error, never the reverse; what is accepted takes no part. Of the same finding on
    several paths the first stays.
    """
    kept: list[Problem] = []
    heads: dict[Cause, int] = {}
    follows: dict[int, int] = {}
    seen: set[tuple[str, str, str]] = set()
    for problem in sorted(problems, key=lambda problem: problem.order):
        same = (problem.rule, problem.step, problem.place)
        if problem.level is Level.ACCEPTED or not problem.causes:
            if problem.order == 0 or same not in seen:
                kept.append(problem)
        elif same not in seen and not _covered(problem, heads, kept):
            kept.append(problem)
            for cause in (*problem.causes, *problem.explains):
                if cause not in heads or _graver(problem, kept[heads[cause]]):
                    heads[cause] = len(kept) - 1
        elif same not in seen:
            head = next(heads[cause] for cause in problem.causes if cause in heads)
            follows[head] = follows.get(head, 0) + 1
        seen.add(same)
    return tuple(replace(problem, follows=follows.get(index, 0)) for index, problem in enumerate(kept))


def _covered(problem: Problem, heads: dict[Cause, int], kept: list[Problem]) -> bool:
    """An error needs all its causes known; a warning may be no more than a trace of one known error."""
    known = [cause in heads and not _graver(problem, kept[heads[cause]]) for cause in problem.causes]
    under_error = any(cause in heads and kept[heads[cause]].level is Level.ERROR for cause in problem.causes)
    return all(known) or (problem.level is not Level.ERROR and under_error)


def _graver(one: Problem, other: Problem) -> bool:
    return one.level is Level.ERROR and other.level is not Level.ERROR
