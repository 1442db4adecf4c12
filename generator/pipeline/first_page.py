"""The page of an edited procedure by itself, and what is wrong with it: what its author waits for."""

from collections.abc import Set
from dataclasses import replace

from generator.outputs.address_links import OpenBook
from generator.outputs.page import Page
from generator.outputs.pages.sheets import student_page
from generator.pipeline.chapter import Wanted, chronicles
from generator.pipeline.check import Checked, check_procedure, study_file
from generator.pipeline.fold import fold_class
from generator.pipeline.standing import show_standing
from generator.problems import Problem
from generator.reading import LabRead, ProcedureFile, read_one
from generator.study import Study


def first_pages(
    wanted: Wanted, paths: frozenset[str], id: str, saved: Set[str]
) -> tuple[tuple[Page, ...], tuple[Problem, ...]]:
    """The pages on which what was saved stands, and its problems; no page where an error stops them.

    `saved` are the procedure's classes whose own files were saved, "" for the procedure itself; `paths` the
    files of the site, since nothing is printed here. What a class makes of an edit of its procedure, the
    prints and every other page follow with the next build. No link is looked up.
    """
    read, checked = _judged(wanted, id, saved)
    if checked.has_errors:
        return (), checked.problems
    ground = wanted.ground
    standings, _ = show_standing(
        read, checked, wanted.draft, ground.stock, wanted.pictures, saved, wanted.formulas
    )
    names = {f"{id}.{tail}" if tail else id for tail in saved}
    told = chronicles(wanted, read, checked, standings, paths, {})
    pages = (
        student_page(study, chronicle, OpenBook()) for study, chronicle in told if study.procedure.id in names
    )
    return tuple(pages), checked.problems


def _judged(wanted: Wanted, id: str, saved: Set[str]) -> tuple[LabRead, Checked]:
    """The procedure read, studied with all its classes, and judged with those that were saved."""
    read = read_one(replace(wanted.nouns, problems=()), id)
    studies: dict[str, Study] = {}
    problems = list(read.problems)
    for file in read.procedures.values():
        for study, found in _studied(wanted, read, file, saved):
            studies[str(study.procedure.id)] = study
            problems += found
    return read, Checked(tuple(problems), wanted.ground.study, studies, shelf=wanted.shelf.only(id))


def _studied(
    wanted: Wanted, read: LabRead, file: ProcedureFile, saved: Set[str]
) -> list[tuple[Study, tuple[Problem, ...]]]:
    lab, shelf = wanted.ground.study, wanted.shelf.only(str(file.procedure.id))
    study, base = check_procedure(lab, file.procedure, read, file, shelf=shelf)
    out = [(study, base)]
    for tail, procedure in file.classes.items():
        if tail in saved:
            own, found = check_procedure(lab, procedure, read, file, file.procedure, shelf)
            out.append((own, fold_class(base, found)))
        else:
            out.append((study_file(lab, procedure, read, file, file.procedure, shelf)[0], ()))
    return out
