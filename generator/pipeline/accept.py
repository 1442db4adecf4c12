"""Warnings that a lab lives with, and entries that no longer hold."""

from collections.abc import Iterable
from dataclasses import replace
from functools import cache

from generator.checks import docs
from generator.checks.accepted import accept_expired, accept_of_error, accept_unused
from generator.model import Accept
from generator.problems import Accepted, Level, Problem
from generator.study import Study


def accept(study: Study, problems: Iterable[Problem], misread: bool = False) -> tuple[Problem, ...]:
    """Warnings named by an entry become accepted; expired, unused and error-level entries are problems."""
    entries = study.procedure.accept
    used: set[int] = set()
    out: list[Problem] = []
    problems = tuple(problems)
    # Where something is wrong, the walk may not have come to what the entry names.
    broken = misread or any(problem.level is Level.ERROR for problem in problems)
    for problem in problems:
        index = next((i for i, entry in enumerate(entries) if _names(entry, problem)), None)
        if index is None:
            out.append(problem)
            continue
        used.add(index)
        entry = entries[index]
        good = problem.level is Level.WARNING and entry.until >= study.today
        out.append(_accepted(problem, entry) if good else problem)
    # A class inherits its procedure's entries, and need not raise every one of those warnings itself.
    inherited = study.class_of.accept if study.class_of else ()
    for index, entry in enumerate(entries):
        if entry.rule in _errors():
            out.append(accept_of_error.at(entry))
        elif entry.until < study.today:
            out.append(accept_expired.at(entry))
        elif index not in used and not broken and entry not in inherited:
            out.append(accept_unused.at(entry))
    return tuple(out)


@cache
def _errors() -> frozenset[str]:
    """The ids of all rules whose problems stop publishing."""
    return frozenset(doc.id for doc in docs() if doc.level is Level.ERROR)


def _names(entry: Accept, problem: Problem) -> bool:
    if entry.rule != problem.rule:
        return False
    if entry.step is not None and entry.step != problem.step:
        return False
    return entry.place is None or entry.place == problem.place


def _accepted(problem: Problem, entry: Accept) -> Problem:
    return replace(
        problem,
        level=Level.ACCEPTED,
        accepted=Accepted(str(entry.who), entry.until.isoformat(), str(entry.because)),
    )
