"""Build a lab's site: check, stop on errors, set the cards, judge them, stop on errors, lay out the pages."""

import datetime
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType

from generator.checks import docs
from generator.formulas import Formula
from generator.hazards import NotScreened, Screening, screen
from generator.outputs.assets import page_assets
from generator.outputs.javascript import formula_path, formulas_script
from generator.outputs.pages.sheets import Told, lab_sheets, lay_out
from generator.outputs.site import Site, SiteFile
from generator.pipeline.cards import SetCard, set_cards
from generator.pipeline.check import Checked, check
from generator.pipeline.day_plans import DayPlans, set_day_plans
from generator.pipeline.hazard_prints import Screenings, print_hazards
from generator.pipeline.kept import NOTHING_KEPT, Kept
from generator.pipeline.marks import card_marks
from generator.pipeline.paper import print_all, set_paper
from generator.pipeline.posted_pictures import posted_picture_files
from generator.pipeline.posted_problems import review_due
from generator.pipeline.shared_facts import shared_banners
from generator.pipeline.sources import Sources, step_sources
from generator.pipeline.standing import Shown, show_standing
from generator.problems import Level, Problem, by_place
from generator.reading import LabRead, edit_address, open_folder, read_lab, site_address
from generator.study import LabStudy
from generator.study.composition import composition_of
from generator.sums import Known
from generator.views.addresses import picture_path
from generator.views.filling.card import CardFacts
from generator.views.filling.posted import posted_view, standing_view
from generator.views.posted import PostedView, StandingView

SUBJECTS = {
    "part": "The part",
    "person": "The person",
    "places": "Places and machines",
    "time": "Time",
    "people": "People and decisions",
    "chemicals": "Chemicals and waste",
    "words": "Words and form",
    "sums": "Sums and cards",
    "posting": "Issues and copies",
    "accepted": "Accepted warnings",
}


@dataclass(frozen=True, slots=True)
class Outcome:
    """The site, None where an error stopped it; every problem found; what was checked."""

    site: Site | None
    problems: tuple[Problem, ...]
    checked: Checked


def build_site(
    folder: Path, today: datetime.date, draft: bool = False, shown: str = "", whole_print: bool = False,
    kept: Kept = NOTHING_KEPT, preview: bool = False,
) -> Outcome:  # fmt: skip
    """Read a lab's folder and build its site; `shown` is how the author names the folder in messages.

    A `preview` on the author's own machine says by each step in which line of which file it stands.
    """
    read = read_lab(open_folder(folder, shown))
    sources = step_sources(read, edit_address(folder), preview)
    return build_read(read, today, draft, site_address(folder), whole_print, kept, sources)


def build_read(
    read: LabRead, today: datetime.date, draft: bool, site_url: str, whole_print: bool = False,
    kept: Kept = NOTHING_KEPT, sources: Sources = MappingProxyType({}),
) -> Outcome:  # fmt: skip
    """The same from files already read.

    `whole_print` adds one PDF of all that must be posted, and hazard papers of procedures without cards.
    `kept` holds what the press made before.
    """
    checked = check(read, today)
    if checked.has_errors or checked.lab is None:
        return Outcome(None, checked.problems, checked)
    known = Known(read.formulas.formulas)
    formulas = {formula.name: formula for formula in known.all()}
    shown = show_standing(read, checked, draft)
    facts = CardFacts(formulas, site_url)
    cards = set_cards(shown.studies, facts, card_marks(shown, site_url), kept)
    paper = set_paper(shown, facts, kept)
    plans = set_day_plans(shown, facts, kept)
    screenings = _screenings(shown.lab)
    hazards = print_hazards(shown, screenings, every=whole_print, kept=kept)
    found = (problem for card in cards for problem in card.problems)
    problems = by_place([*checked.problems, *found, *paper.problems, *plans.problems, *hazards.problems])
    if any(problem.level is Level.ERROR for problem in problems):
        return Outcome(None, problems, checked)
    printed = (*_card_files(cards), *paper.files, *plans.files, *hazards.files)
    if whole_print:
        titles = [str(study.procedure.title) for study in shown.studies if plans.own(study)]
        printed = (*printed, print_all(shown.lab, cards, paper, titles))
    pictures = (*_pictures(read), *posted_picture_files(shown.studies, read.folder))
    files = (*page_assets(), *pictures, *_formulas(tuple(known.all())), *printed)
    site = _site(checked, shown, tuple(known.all()), screenings, files, draft, sources, plans)
    return Outcome(site, problems, checked)


def _site(
    checked: Checked,
    shown: Shown,
    formulas: tuple[Formula, ...],
    screenings: Screenings,
    files: tuple[SiteFile, ...],
    draft: bool,
    sources: Sources,
    plans: DayPlans,
) -> Site:
    lab, paths = shown.lab, frozenset(file.path for file in files)
    told = Told(
        lab,
        shown.studies,
        formulas,
        docs(),
        SUBJECTS,
        checked.problems,
        checked.not_made,
        posted=_posted(checked, shown, paths),
        standings=dict(_standings(checked, shown)),
        screenings=screenings,
        days=plans.days,
        files=paths,
        sources=sources,
        banners=shared_banners(checked.lab.lab, shown, draft) if checked.lab else {},
    )
    pages, entries = lay_out(lab_sheets(told), paths)
    room = lab.lab.lab
    name = f"{room.title or room.room}, {room.name}"
    return Site(name, pages, files, entries, str(room.language), lab.today.isoformat(), draft)


def _standings(checked: Checked, shown: Shown) -> Iterator[tuple[str, StandingView]]:
    for one in shown.standings:
        for study in one.studies.values():
            due = review_due(study.procedure, one.head) if one.head else None
            view = standing_view(study, checked.shelf, one.status, one.edited, due, one.codes)
            yield str(study.procedure.id), view


def _posted(checked: Checked, shown: Shown, paths: frozenset[str]) -> PostedView:
    rows = ((study, one.status, one.codes) for one in shown.standings for study in one.studies.values())
    room = shown.lab.lab.lab
    return posted_view(checked.shelf, rows, shown.lab.today, paths, f"{room.title or room.room}, {room.name}")


def _screenings(lab: LabStudy) -> dict[str, Screening | NotScreened]:
    found = {str(id): composition_of(lab.lab, str(id)) for id in lab.lab.mixtures}
    return {id: screen(composition) for id, composition in found.items() if composition is not None}


def _pictures(read: LabRead) -> tuple[SiteFile, ...]:
    folder = read.folder.path / "pictures"
    return tuple(
        SiteFile(picture_path(name), (folder / name).read_bytes()) for name in sorted(read.folder.pictures)
    )


def _formulas(formulas: tuple[Formula, ...]) -> tuple[SiteFile, ...]:
    return tuple(SiteFile(formula_path(each.name), formulas_script((each,)).encode()) for each in formulas)


def _card_files(cards: tuple[SetCard, ...]) -> tuple[SiteFile, ...]:
    return tuple(file for card in cards for file in card.files)
