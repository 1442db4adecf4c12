"""The first cause only: what follows from a cause already named is counted under it."""

from collections.abc import Iterable
from dataclasses import replace

from generator.problems import Cause, Level, Problem

MOST_TOLD = 3


def fold(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Problems in the order walked, each whose causes are all known folded under the first of them.

    A warning folds under an error, never the reverse; what is accepted takes no part. Of the same finding on
    several paths the first stays.
    """
    folded = _Folded()
    for problem in sorted(problems, key=lambda problem: (problem.level is not Level.ERROR, problem.order)):
        folded.take(problem)
    told = [
        replace(problem, follows=folded.follows.get(index, 0)) for index, problem in enumerate(folded.kept)
    ]
    return tuple(_told_by_step(told))


def _told_by_step(told: list[Problem]) -> list[Problem]:
    """Where the walk still tells more than three things, a wrong step is told once, with what it made."""
    walked = sorted((problem for problem in told if _counts(problem)), key=lambda problem: problem.order)
    if len(walked) <= MOST_TOLD:
        return told
    heads: dict[str, Problem] = {}
    under: dict[int, int] = {}
    for problem in walked:
        steps = {problem.step, *(cause.since for cause in problem.causes)}
        head = next((heads[step] for step in sorted(steps) if step in heads), None)
        if head is None or _graver(problem, head):
            heads.setdefault(problem.step, problem)
        else:
            under[id(problem)] = id(head)
    more = dict.fromkeys(under.values(), 0)
    for problem in walked:
        if id(problem) in under:
            more[under[id(problem)]] += 1 + problem.follows
    return [
        replace(problem, follows=problem.follows + more.get(id(problem), 0))
        for problem in told
        if id(problem) not in under
    ]


def _counts(problem: Problem) -> bool:
    return problem.order > 0 and problem.level in (Level.ERROR, Level.WARNING)


class _Folded:
    """What is kept, which kept problem heads which cause, and how many follow from each."""

    def __init__(self) -> None:
        self.kept: list[Problem] = []
        self.heads: dict[Cause, int] = {}
        self.follows: dict[int, int] = {}
        self.seen: set[tuple[str, str, str]] = set()
        self.wrong_steps: dict[str, int] = {}
        self.wrong_paths: dict[str, int] = {}

    def take(self, problem: Problem) -> None:
        """Keep a problem, or count it under the one that explains it."""
        same = (problem.rule, problem.step, problem.place)
        if problem.order and same in self.seen:
            return
        self.seen.add(same)
        head = None if problem.level is Level.ACCEPTED else self.head_of(problem)
        if head is not None:
            self.follows[head] = self.follows.get(head, 0) + 1
            return
        self.kept.append(problem)
        if problem.level is not Level.ACCEPTED:
            self.lead(problem, len(self.kept) - 1)

    def lead(self, problem: Problem, index: int) -> None:
        """From now on this problem explains its causes; an error takes over from a warning."""
        if problem.level is Level.ERROR and problem.order and not problem.path:
            self.wrong_steps.setdefault(problem.step, index)
        if problem.level is Level.ERROR and problem.path:
            self.wrong_paths.setdefault(_branch(problem.path), index)
        for cause in (*problem.causes, *problem.explains):
            if cause not in self.heads or _graver(problem, self.kept[self.heads[cause]]):
                self.heads[cause] = index

    def head_of(self, problem: Problem) -> int | None:
        """The kept problem that explains this one.

        An error needs all its causes known; a warning may be a mere trace of one known error. A step
        wrong on the straight run is not judged again on a redo; of one redo the first error is told.
        """
        if problem.path and problem.step in self.wrong_steps:
            return self.wrong_steps[problem.step]
        if problem.path and _branch(problem.path) in self.wrong_paths:
            return self.wrong_paths[_branch(problem.path)]
        known = [self.heads[cause] for cause in problem.causes if cause in self.heads]
        fitting = [index for index in known if not _graver(problem, self.kept[index])]
        if problem.causes and len(fitting) == len(problem.causes):
            return fitting[0]
        grave = [index for index in known if self.kept[index].level is Level.ERROR]
        return grave[0] if grave and problem.level is not Level.ERROR else None


def _branch(path: str) -> str:
    """The check or pause that a path leaves the straight run at, however often it fails."""
    return path.split(" failed")[0]


def _graver(one: Problem, other: Problem) -> bool:
    return one.level is Level.ERROR and other.level is not Level.ERROR
