"""From a lab as read to what is told about it: the pipeline's answer in the shape of a report."""

from generator.cli.day import day_of_run
from generator.cli.report import Report, Walked
from generator.cli.target import Target
from generator.pipeline import Checked, check
from generator.problems import NewelError, Problem
from generator.reading import LabRead
from generator.study import Study


def check_target(target: Target) -> Report:
    """Check a lab, or one procedure in it, and report."""
    return report_of(check(target.read, day_of_run(), target.only), target)


def study_target(target: Target, id: str) -> Study:
    """The study of a procedure or class; NewelError where its files cannot be understood."""
    studies = check(target.read, day_of_run(), target.only).studies
    if id in studies:
        return studies[id]
    known = ", ".join(studies) or "none"
    raise NewelError("not-walked", f"{id} was not walked", "its files, or the lab's, could not be understood",
                     f"run `newel check`; what can be traced here: {known}")  # fmt: skip


def report_of(checked: Checked, target: Target) -> Report:
    """What was checked, for a form to show."""
    from generator.checks import docs

    texts = {name: document.text for name, document in target.read.documents.items()}
    problems = tuple(problem for problem in checked.problems if _concerns(problem, target))
    walked = None if checked.lab is None else walked_of(checked)
    return Report(problems, texts, walked, checked.not_made, docs())


def walked_of(checked: Checked) -> Walked:
    """How much was walked; a path is a straight run, a redo or a pause of a procedure."""
    studies = tuple(checked.studies.values())
    classes = sum(study.class_of is not None for study in studies)
    return Walked(
        procedures=len(studies) - classes,
        classes=classes,
        steps=sum(1 for study in studies for _ in study.steps()),
        paths=sum(1 + len(study.walk.paths) for study in studies),
        unfinished=tuple(str(study.procedure.id) for study in studies if not study.walk.finished),
    )


def _concerns(problem: Problem, target: Target) -> bool:
    """Whether a problem stands in the lab's own files or in those of the procedure asked for."""
    return not target.only or problem.where.file not in _files_of_others(target.read, target.only)


def _files_of_others(read: LabRead, only: str) -> set[str]:
    procedures = {name for id, (name, _) in read.folder.procedures.items() if id != only}
    return procedures | {name for (base, _), (name, _) in read.folder.sides.items() if base != only}
