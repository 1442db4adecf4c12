"""One procedure through the whole flow: read, checked, shown as it stands, printed, its pages laid out."""

import datetime
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from generator.checks import runnable
from generator.checks.evidence.lab_uses import uses_of
from generator.formulas import Formula
from generator.outputs.pages.sheets import Chronicle, procedure_sheets
from generator.pipeline.check import Checked, check_file
from generator.pipeline.looks import Ground, Watch
from generator.pipeline.parts import Leaves, keep_files, lay_sheets
from generator.pipeline.posted_pictures import posted_picture_files
from generator.pipeline.posted_problems import review_due
from generator.pipeline.printed import Printed, Sets
from generator.pipeline.slips import Part
from generator.pipeline.sources import step_sources
from generator.pipeline.standing import Shown, Standing, show_standing
from generator.posting.shelf import Shelf
from generator.problems import Level, Problem
from generator.reading import EditAddress, LabRead, read_one
from generator.study import Study
from generator.study.uses import Uses
from generator.views.day_plan import DayPlanView
from generator.views.filling.door_sign import unattended_steps
from generator.views.filling.posted import current_cards, standing_view
from generator.views.filling.prints import papers_of
from generator.views.filling.summary import summary_of
from generator.views.posted import CurrentCardView, PrintsView
from generator.views.summary import ProcedureSummary


@dataclass(frozen=True, slots=True)
class Display:
    """What is shown of a procedure, and how it stands.

    `replaced` says that an issue is shown in place of its files, `edited` that they differ from one that
    stands; `uses` are the lab's nouns of one that is posted just as its files are.
    """

    part: Part
    title: str
    summaries: tuple[ProcedureSummary, ...]
    cards: tuple[CurrentCardView, ...]
    papers: tuple[PrintsView, ...]
    replaced: bool
    edited: bool
    uses: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Chapter:
    """What was found in a procedure, the rules that had what they need, what it uses, what is shown of it.

    `misread` says that something could not be read as written. Nothing is shown where an error stops it.
    """

    problems: tuple[Problem, ...] = ()
    misread: bool = False
    ran: tuple[str, ...] = ()
    uses: Uses | None = None
    display: Display | None = None


@dataclass(frozen=True)
class Wanted:
    """What a build is asked for, and all it has beside the procedures.

    `base` names all of it that is not looked up by id, `every` prints the hazard papers of procedures without
    cards too.
    """

    nouns: LabRead
    ground: Ground
    shelf: Shelf
    today: datetime.date
    draft: bool
    site_url: str
    formulas: Mapping[str, Formula]
    pictures: Mapping[str, str]
    edit: EditAddress | None = None
    preview: bool = False
    base: str = ""
    every: bool = False
    sets: Sets = field(default_factory=Sets)


def write_chapter(wanted: Wanted, leaves: Leaves, id: str, watch: Watch, checked_only: bool) -> Chapter:
    """A procedure's chapter, from its files and the watched lab; one without a file is an issue's."""
    read, checked = _judge(wanted, id, watch)
    studies = checked.studies.values()
    uses = next((uses_of(watch.study, file.procedure) for file in read.procedures.values()), None)
    ran = tuple(dict.fromkeys(id for study in studies for id in runnable(study).ids))
    hidden = checked.has_errors or checked_only
    display = None if hidden else _display(wanted, leaves, read, checked, watch)
    return Chapter(checked.problems, bool(read.problems), ran, uses, display)


def _judge(wanted: Wanted, id: str, watch: Watch) -> tuple[LabRead, Checked]:
    """A procedure's files, read and checked."""
    nouns = replace(wanted.nouns, lab=watch.study.lab, problems=())
    read = read_one(nouns, id) if id in nouns.folder.procedures else nouns
    shelf = wanted.shelf.only(id)
    problems, studies = list(read.problems), {}
    for file in read.procedures.values():
        for study, found in check_file(watch.study, file, read, shelf):
            studies[str(study.procedure.id)] = study
            problems += found
    return read, Checked(tuple(problems), watch.study, studies, shelf=shelf)


def _display(wanted: Wanted, leaves: Leaves, read: LabRead, checked: Checked, watch: Watch) -> Display:
    standings, issues = show_standing(
        read, checked, wanted.draft, watch.stock, wanted.pictures, formulas=wanted.formulas
    )
    shown = Shown(watch.study, standings)
    printed = _printed(wanted, leaves, shown)
    told = tuple(chronicles(wanted, read, checked, standings, printed.paths, printed.days))
    stopped = any(problem.level is Level.ERROR for problem in printed.problems)
    sheets = (
        it for study, chronicle in ([] if stopped else told) for it in procedure_sheets(study, chronicle)
    )
    files = (*printed.files, *posted_picture_files(shown.studies, read.folder))
    part = replace(lay_sheets(leaves, sheets), files=keep_files(leaves, files), problems=printed.problems)
    return Display(
        part,
        next((str(one.studies[""].procedure.title) for one in standings), ""),
        tuple(summary_of(study, chronicle.standing) for study, chronicle in told),
        tuple(card for one in standings for study in one.studies.values()
              for card in current_cards(checked.shelf, study, one.status, one.codes, printed.paths)),
        tuple(papers_of(study) for study, _ in told),
        bool(issues),
        any(one.issue is not None and not one.withdrawn for one in standings),
        tuple(sorted(name for one in standings for name in one.uses)),
    )  # fmt: skip


def chronicles(
    wanted: Wanted, read: LabRead, checked: Checked, standings: Iterable[Standing], paths: frozenset[str],
    days: Mapping[str, tuple[DayPlanView, ...]],
) -> Iterator[tuple[Study, Chronicle]]:  # fmt: skip
    """Every study that is shown with what its pages are told from; `paths` are of its printed files."""
    sources = step_sources(read, wanted.edit, wanted.preview)
    for one in standings:
        for study in one.studies.values():
            due = review_due(study.procedure, one.head) if one.head else None
            standing = standing_view(study, checked.shelf, one.status, one.edited, due, one.codes)
            plans = days.get(str(study.procedure.id), ())
            yield study, Chronicle(wanted.formulas, paths, standing, plans, sources.get(one.id, {}))


def _printed(wanted: Wanted, leaves: Leaves, shown: Shown) -> Printed:
    """All that is printed of a procedure; one that posts nothing does not wait for the press to be loaded."""
    studies = shown.studies
    if not wanted.every and not any(study.procedure.cards or unattended_steps(study) for study in studies):
        return Printed()
    from generator.pipeline.prints import print_shown

    sets = wanted.sets if wanted.every else None
    return print_shown(shown, wanted.formulas, wanted.site_url, sets, leaves.kept)
