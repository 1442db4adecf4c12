"""Pages to come: known by address and anchors first, then rendered."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from generator.formulas import Formula
from generator.outputs.address_links import AddressBook, Book
from generator.outputs.page import Page
from generator.outputs.pages import chemical, day, overview, procedure
from generator.outputs.search import SearchEntry
from generator.outputs.strip import strip_html
from generator.study import Study
from generator.views import addresses
from generator.views.day_plan import DayPlanView
from generator.views.filling.day_page import day_page_view
from generator.views.filling.hazards import hazards_view
from generator.views.filling.office import office_view
from generator.views.filling.procedure import procedure_view
from generator.views.filling.search_words import search_text
from generator.views.filling.strip import strip_view
from generator.views.posted import StandingView
from generator.views.procedure import ProcedureView
from generator.views.shown import SourceView

TOP = "page_top"


@dataclass(frozen=True, slots=True)
class Sheet:
    """A page to come: address, anchors that others may link to, how it is made, what finds it, its view."""

    address: str
    anchors: frozenset[str]
    make: Callable[[Book], Page]
    entries: tuple[SearchEntry, ...] = ()
    view: object = None


def lay_out(
    sheets: Iterable[Sheet], files: frozenset[str]
) -> tuple[tuple[Page, ...], tuple[SearchEntry, ...]]:
    """Render every page over the address book of all; a link that leads nowhere raises NewelError."""
    found = tuple(sheets)
    book = AddressBook({sheet.address: sheet.anchors | {TOP} for sheet in found}, files)
    pages = tuple(sheet.make(book) for sheet in found)
    return pages, tuple(entry for sheet in found for entry in sheet.entries)


def no_anchors(_: object) -> frozenset[str]:
    """A page to which others link as a whole."""
    return frozenset()


def sheet(
    address: str,
    anchors: Callable[[Any], frozenset[str]],
    make: Callable[[Any, Book], Page],
    view: Any,
    *entries: SearchEntry,
) -> Sheet:
    """The page of a view."""
    return Sheet(address, anchors(view), lambda book: make(view, book), entries, view)


@dataclass(frozen=True)
class Chronicle:
    """What a procedure's pages are told from beside its study.

    `files` are its printed ones, `days` the plans of a class, `sources` by step.
    """

    formulas: Mapping[str, Formula]
    files: frozenset[str] = frozenset()
    standing: StandingView = field(default_factory=StandingView)
    days: tuple[DayPlanView, ...] = ()
    sources: Mapping[str, SourceView] = field(default_factory=dict)


def student_page(study: Study, told: Chronicle, book: Book) -> Page:
    """The student's page by itself."""
    return procedure.procedure_page(_student_view(study, told), book)


def _student_view(study: Study, told: Chronicle) -> ProcedureView:
    strip = strip_view(study)
    drawn = strip_html(strip) if strip else ""
    return procedure_view(study, told.formulas, (), told.files, drawn, told.standing, told.sources)


def procedure_sheets(study: Study, told: Chronicle) -> Iterator[Sheet]:
    """The student's page, the hazard summary, the day plan of a class and the safety office's sheet."""
    id, files, standing = study.procedure.id, told.files, told.standing
    view = _student_view(study, told)
    found = procedure.procedure_entry(view, search_text(study), study.used_codes())
    entries = (found, *procedure.symptom_entries(view))
    address = addresses.procedure_address(id)
    yield sheet(address, procedure.procedure_anchors, procedure.procedure_page, view, *entries)
    summary = hazards_view(study, standing.banners, files)
    yield sheet(addresses.hazards_address(id), chemical.summary_anchors, chemical.summary_page, summary)
    if told.days:
        plan = day_page_view(study, told.days, standing.banners, files)
        yield sheet(addresses.day_plan_address(id), day.day_anchors, day.day_page, plan)
    office = office_view(study, standing.banners, files)
    yield sheet(addresses.office_address(id), overview.office_anchors, overview.office_page, office)
