"""The first cause only: what follows from a cause already named is counted under it."""

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace

from generator.problems import MISSING, Cause, Level, Problem, misplaced


def fold(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Problems in the order walked, each whose causes are all known folded under the first of them.

    A warning folds under an error, never the reverse; what is accepted takes no part. Of the same finding on
    several paths the first stays.
    """
    folded = _Folded()
    for problem in sorted(problems, key=_first_told):
        folded.take(problem)
    return tuple(
        replace(problem, follows=folded.follows.get(index, 0)) for index, problem in enumerate(folded.kept)
    )


def _first_told(problem: Problem) -> tuple[bool, int, int]:
    """Errors first, in the order walked; of what one step does wrong, first what explains the most."""
    return (problem.level is not Level.ERROR, problem.order, -len(problem.explains) if problem.order else 0)


def fold_missing(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """What names a step, stage or card that is gone, in whatever file, under the first that says so."""
    given = tuple(problems)
    heads: dict[Cause, Problem] = {}
    for problem in sorted(given, key=lambda one: (not one.explains, one.where)):
        for cause in (*problem.explains, *problem.causes):
            if cause.atom.startswith(MISSING):
                heads.setdefault(cause, problem)
    under = {
        id(one): heads[one.causes[0]]
        for one in given
        if _names_missing(one) and heads[one.causes[0]] is not one
    }
    follows = Counter(id(head) for head in under.values())
    return tuple(
        replace(one, follows=one.follows + follows[id(one)]) if id(one) in follows else one
        for one in given
        if id(one) not in under
    )


def _names_missing(problem: Problem) -> bool:
    return len(problem.causes) == 1 and problem.causes[0].atom.startswith(MISSING)


def fold_class(base: Iterable[Problem], found: Iterable[Problem]) -> tuple[Problem, ...]:
    """A class's problems without those that its procedure has at the same line already."""
    told = {_finding(problem) for problem in base}
    return tuple(problem for problem in found if _finding(problem) not in told)


def _finding(problem: Problem) -> tuple[object, ...]:
    return (problem.rule, problem.level, problem.where, problem.step, problem.place)


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
            # What follows from a consequence follows from its cause.
            for cause in (*problem.causes, *problem.explains):
                self.heads.setdefault(cause, head)
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
        elsewhere = self.heads.get(misplaced(problem.step)) if problem.order and problem.step else None
        if elsewhere is not None:
            return elsewhere
        if problem.path and problem.step in self.wrong_steps:
            return self.wrong_steps[problem.step]
        if problem.path and _branch(problem.path) in self.wrong_paths:
            return self.wrong_paths[_branch(problem.path)]
        heads = [self.head_behind(cause) for cause in problem.causes]
        known = [index for index in heads if index is not None]
        fitting = [index for index in known if not _graver(problem, self.kept[index])]
        if problem.causes and len(fitting) == len(problem.causes):
            return fitting[0]
        grave = [index for index in known if self.kept[index].level is Level.ERROR]
        return grave[0] if grave and problem.level is not Level.ERROR else None

    def head_behind(self, cause: Cause) -> int | None:
        """The kept problem that knows of a cause, or that its step stands at the wrong place of the run."""
        return self.heads.get(cause, self.heads.get(misplaced(cause.since)))


def _branch(path: str) -> str:
    """The check or pause that a path leaves the straight run at, however often it fails."""
    return path.split(" failed")[0]


def _graver(one: Problem, other: Problem) -> bool:
    return one.level is Level.ERROR and other.level is not Level.ERROR
