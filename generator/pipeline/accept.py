"""Warnings that a lab lives with, and entries that no longer hold."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import cache

from generator.checks import docs
from generator.checks.accepted import accept_expired, accept_of_error, accept_unused
from generator.model import Accept, Lab, Located
from generator.problems import Accepted, Level, Location, Problem
from generator.study import LabStudy, Study

_THINGS = (
    "substances", "mixtures", "places", "waste", "racks", "timers", "residues", "ppe", "roles", "signoffs",
    "hazard_words",
)  # fmt: skip


def accept(study: Study, problems: Iterable[Problem], misread: bool = False) -> tuple[Problem, ...]:
    """Warnings named by an entry become accepted; expired, unused and error-level entries are problems."""
    problems = tuple(problems)
    # Where something is wrong, the walk may not have come to what the entry names.
    broken = misread or any(problem.level is Level.ERROR for problem in problems)
    # A class inherits its procedure's entries, and need not raise every one of those warnings itself.
    inherited = study.class_of.accept if study.class_of else ()
    judged = _Entries(study, study.procedure.accept)
    out = [judged.take(problem) for problem in problems]
    return (*out, *judged.told(lambda entry: not broken and entry not in inherited))


def accept_in_lab(study: LabStudy, problems: Iterable[Problem], whole: bool = True) -> tuple[Problem, ...]:
    """The same by the lab's own entries, for what stands in its files, whichever procedure raised it.

    Where not the `whole` lab was checked, an entry that names nothing is no problem.
    """
    problems = tuple(problems)
    broken = not whole or any(problem.level is Level.ERROR for problem in problems)
    judged = _Entries(study, study.lab.accept)
    files = {noun.where.file for noun in _nouns(study.lab).values()} | {study.lab.where.file}
    out = [judged.take(problem) if problem.where.file in files else problem for problem in problems]
    return (*out, *judged.told(lambda _: not broken))


class _Entries:
    """The entries of one file, which of them were used, and which were used for nothing but errors."""

    def __init__(self, study: LabStudy, entries: tuple[Accept, ...]) -> None:
        self.study = study
        self.entries = entries
        self.used: dict[int, set[Level]] = {}

    def take(self, problem: Problem) -> Problem:
        """The problem, accepted where an entry names it and holds."""
        index = next((i for i, entry in enumerate(self.entries) if self.names(entry, problem)), None)
        if index is None:
            return problem
        self.used.setdefault(index, set()).add(problem.level)
        entry = self.entries[index]
        good = problem.level is Level.WARNING and entry.until >= self.study.today
        return _accepted(problem, entry) if good else problem

    def names(self, entry: Accept, problem: Problem) -> bool:
        """Whether an entry names a problem: by its rule, and its step, place or thing where it gives one."""
        if entry.rule != problem.rule:
            return False
        if entry.step is not None and entry.step != problem.step:
            return False
        if entry.place is not None and entry.place != problem.place:
            return False
        return entry.thing is None or str(entry.thing) == _thing_at(self.study.lab, problem.where)

    def told(self, wanted: Callable[[Accept], bool]) -> Iterable[Problem]:
        """What is wrong with the entries themselves; an unused one only where it is `wanted`."""
        for index, entry in enumerate(self.entries):
            levels = self.used.get(index, set())
            if entry.rule in _errors() or levels == {Level.ERROR}:
                yield accept_of_error.at(entry)
            elif entry.until < self.study.today:
                yield accept_expired.at(entry)
            elif not levels and wanted(entry):
                yield accept_unused.at(entry)


def _thing_at(lab: Lab, where: Location) -> str:
    """The id of the noun of the lab in which a place of its files lies; empty where it lies in none."""
    before = [
        (noun.where.line, id)
        for (_, id), noun in _nouns(lab).items()
        if noun.where.file == where.file and noun.where.line <= where.line
    ]
    return max(before)[1] if before else ""


def _nouns(lab: Lab) -> dict[tuple[str, str], Located]:
    return {(noun, str(id)): one for noun in _THINGS for id, one in getattr(lab, noun).items()}


@cache
def _errors() -> frozenset[str]:
    """The ids of all rules whose problems always stop publishing."""
    return frozenset(doc.id for doc in docs() if doc.level is Level.ERROR and doc.sometimes is None)


def _accepted(problem: Problem, entry: Accept) -> Problem:
    return replace(
        problem,
        level=Level.ACCEPTED,
        accepted=Accepted(str(entry.who), entry.until.isoformat(), str(entry.because)),
    )
