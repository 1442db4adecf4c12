"""Check a lab: study each procedure, run every rule, fold what follows, accept what is accepted."""

import datetime
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

from generator.checks import RULES, Rule, runnable
from generator.checks.evidence.lab_uses import uses_of
from generator.model import FormulaRef, Procedure, Step
from generator.pipeline.accept import accept, accept_in_lab
from generator.pipeline.fold import fold, fold_class, fold_missing
from generator.pipeline.posted_pictures import altered_pictures
from generator.pipeline.posted_problems import posted_in_lab, posted_in_procedure
from generator.posting.shelf import Posted, Shelf, open_shelf
from generator.problems import Level, Problem, by_place
from generator.reading import LabRead, ProcedureFile
from generator.study import LabStudy, Study, study_lab, study_procedure
from generator.sums import Known, settings_problems, work_out
from generator.walk import worn_as

_MISREAD = ("unknown-name", "unknown-key", "required-missing", "unreadable", "unit-missing")


@dataclass(frozen=True, slots=True)
class Checked:
    """Every problem in the order of the files, the studies and the rules not run by id, what is posted."""

    problems: tuple[Problem, ...]
    lab: LabStudy | None = None
    studies: Mapping[str, Study] = field(default_factory=dict)
    not_made: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    shelf: Shelf = field(default_factory=Shelf)

    def count(self, level: Level) -> int:
        """How many problems of a level."""
        return sum(problem.level is level for problem in self.problems)

    @property
    def has_errors(self) -> bool:
        """Whether anything stops publishing."""
        return self.count(Level.ERROR) > 0


def check(read: LabRead, today: datetime.date, only: str = "") -> Checked:
    """All problems of a lab and its procedures, or of the lab and one procedure."""
    if read.lab is None:
        return Checked(read.problems)
    files = {id: file for id, file in read.procedures.items() if only in ("", id)}
    bare = study_lab(read.lab, {}, read.folder.pictures, today)
    lab = replace(bare, uses={id: uses_of(bare, file.procedure) for id, file in read.procedures.items()})
    shelf = open_shelf(read.folder.posted, read.folder.shown)
    problems = [*read.problems, *in_lab(lab), *posted_in_lab(lab, shelf, read.folder.procedures)]
    problems += altered_pictures(read.folder)
    if not read.formulas.faults:
        problems += settings_problems(read.lab, Known(read.formulas.formulas))
    studies: dict[str, Study] = {}
    for file in files.values():
        for study, found in check_file(lab, file, read, shelf):
            studies[study.procedure.id] = study
            problems += found
    problems = list(accept_in_lab(lab, fold_missing(problems), whole=not only and not read.problems))
    return Checked(by_place(problems), lab, studies, _not_made(lab, studies.values()), shelf)


def check_file(
    lab: LabStudy, file: ProcedureFile, read: LabRead, shelf: Shelf
) -> Iterable[tuple[Study, tuple[Problem, ...]]]:
    """A procedure and then each of its classes, with what was found in it."""
    study, base = check_procedure(lab, file.procedure, read, file, shelf=shelf)
    yield study, base
    for procedure in file.classes.values():
        own, found = check_procedure(lab, procedure, read, file, file.procedure, shelf)
        yield own, fold_class(base, found)


def check_procedure(
    lab: LabStudy,
    procedure: Procedure,
    read: LabRead,
    file: ProcedureFile,
    class_of: Procedure | None = None,
    shelf: Shelf | None = None,
) -> tuple[Study, tuple[Problem, ...]]:
    """One procedure's study and its problems, folded and with what is accepted."""
    shelf = shelf or Shelf()
    study, faults = study_file(lab, procedure, read, file, class_of, shelf)
    broken = any(p.level is Level.ERROR and p.where.file == procedure.where.file for p in read.problems)
    found = [*faults, *posted_in_procedure(study, shelf, broken)]
    for find in runnable(study).finders:
        found += find(study)
    misread = _misread(read, study)
    if misread:
        found = [problem for problem in found if problem.order == 0]
    return study, fold(accept(study, found, misread))


def study_file(
    lab: LabStudy, procedure: Procedure, read: LabRead, file: ProcedureFile, class_of: Procedure | None,
    shelf: Shelf,
) -> tuple[Study, tuple[Problem, ...]]:  # fmt: skip
    """A procedure of a file, or a class of it, studied; with what is wrong with its sums."""
    sums, faults = work_out(lab.lab, procedure, Known(read.formulas.formulas))
    posted = Posted(shelf.issues.get(str(procedure.id), ()))
    return study_procedure(lab, procedure, sums, class_of, file.languages, posted), tuple(faults)


def _misread(read: LabRead, study: Study) -> bool:
    """Whether a step could not be read as written, so that the walk says little about it."""
    form = any(
        problem.rule in _MISREAD and problem.step and problem.where.file == study.procedure.where.file
        for problem in read.problems
    )
    return form or any(_is_strange(study, located.step) for located in study.steps())


def _is_strange(study: Study, step: Step) -> bool:
    """Whether a step's place, a piece that it puts on or takes off, or its time is not known.

    A mistyped piece stands for the nearest one; a time that could not be worked out would be none at all.
    """
    places, ppe = study.lab.places, study.lab.ppe
    if step.at and places and step.at not in places:
        return True
    if isinstance(step.for_, FormulaRef) and study.sums.time_of(step) is None:
        return True
    worn = (*step.put_on, *step.take_off) if ppe else ()
    return bool(worn) and any(name not in ppe for name in worn_as(study.lab, worn))


def in_lab(lab: LabStudy) -> list[Problem]:
    """What the rules of the whole lab find."""
    return [problem for rule in RULES if rule.in_lab and rule.can_run(lab) for problem in rule.in_lab(lab)]


def _not_made(lab: LabStudy, studies: Iterable[Study]) -> dict[str, tuple[str, ...]]:
    """Rules not run because a noun is missing everywhere, with the missing nouns."""
    procedures = tuple(studies)
    return {
        rule.doc.id: rule.doc.needs
        for rule in RULES
        if rule.doc.needs and not _runs_somewhere(rule, procedures if rule.in_procedure else (lab,))
    }


def _runs_somewhere(rule: Rule, studies: Iterable[LabStudy]) -> bool:
    return any(rule.can_run(study) for study in studies)
