"""Every page of a lab: known by address and anchors first, rendered once all of them are known."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from generator.formulas import Formula
from generator.hazards import NotScreened, Screening
from generator.outputs.address_links import AddressBook
from generator.outputs.formula_page import with_formula
from generator.outputs.page import Page
from generator.outputs.pages import (
    calculator,
    checking,
    chemical,
    day,
    lists,
    overview,
    place,
    posted,
    procedure,
    reference,
)
from generator.outputs.search import SearchEntry
from generator.outputs.strip import strip_html
from generator.problems import Problem, RuleDoc
from generator.study import LabStudy, Study
from generator.views import addresses
from generator.views.day_plan import DayPlanView
from generator.views.filling.calculator import calculator_view
from generator.views.filling.chemical import mixture_view, substance_view
from generator.views.filling.day_page import day_page_view
from generator.views.filling.hazards import hazards_view
from generator.views.filling.home import (
    calculators_index,
    chemicals_index,
    glossary_view,
    home_view,
    places_index,
    rules_index,
)
from generator.views.filling.lab_hazards import lab_hazards_view
from generator.views.filling.model_reference import reference_view
from generator.views.filling.office import office_view
from generator.views.filling.place import place_view
from generator.views.filling.procedure import procedure_view
from generator.views.filling.procedure_rows import procedures_index
from generator.views.filling.report import report_view
from generator.views.filling.strip import strip_view
from generator.views.index import IndexView
from generator.views.posted import PostedView, StandingView
from generator.views.shown import BannerView, SourceView

_TOP = "page_top"


@dataclass(frozen=True, slots=True)
class Sheet:
    """A page to come: its address, the anchors that others may link to, how it is made, what finds it."""

    address: str
    anchors: frozenset[str]
    make: Callable[[AddressBook], Page]
    entries: tuple[SearchEntry, ...] = ()


@dataclass(frozen=True)
class Told:
    """All that the pages are told from.

    `standings` are by the id of a procedure, `screenings` by the id of a mixture, `sources` by procedure and
    step, `days` by procedure, `banners` by noun and id; `files` are the paths of the site's files.
    """

    lab: LabStudy
    studies: tuple[Study, ...]
    formulas: tuple[Formula, ...] = ()
    docs: tuple[RuleDoc, ...] = ()
    subjects: Mapping[str, str] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()
    not_made: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    posted: PostedView = field(default_factory=lambda: PostedView((), ()))
    standings: Mapping[str, StandingView] = field(default_factory=dict)
    screenings: Mapping[str, Screening | NotScreened] = field(default_factory=dict)
    days: Mapping[str, tuple[DayPlanView, ...]] = field(default_factory=dict)
    files: frozenset[str] = frozenset()
    sources: Mapping[str, Mapping[str, SourceView]] = field(default_factory=dict)
    banners: Mapping[tuple[str, str], tuple[BannerView, ...]] = field(default_factory=dict)


def lay_out(
    sheets: Iterable[Sheet], files: frozenset[str]
) -> tuple[tuple[Page, ...], tuple[SearchEntry, ...]]:
    """Render every page over the address book of all; a link that leads nowhere raises NewelError."""
    found = tuple(sheets)
    book = AddressBook({sheet.address: sheet.anchors | {_TOP} for sheet in found}, files)
    pages = tuple(sheet.make(book) for sheet in found)
    return pages, tuple(entry for sheet in found for entry in sheet.entries)


def lab_sheets(told: Told) -> Iterator[Sheet]:
    """Every page of a lab, those of the navigation in its order."""
    home = home_view(told.lab, told.studies, (), told.standings)
    yield _sheet(addresses.HOME, lists.home_anchors, lists.home_page, home)
    yield _index(procedures_index(told.lab, told.studies))
    if told.lab.lab.places:
        yield _index(places_index(told.lab))
    if told.lab.lab.substances or told.lab.lab.mixtures:
        yield _index(chemicals_index(told.lab))
        yield from _overview(told)
    if told.formulas:
        yield _index(calculators_index(told.formulas))
    yield _sheet(addresses.CARDS, posted.posted_anchors, posted.posted_page, told.posted)
    yield from _glossary(told)
    yield _index(rules_index(told.docs, told.subjects))
    yield from _procedures(told)
    yield from _places(told)
    yield from _chemicals(told)
    yield from _calculators(told)
    yield from _checks(told)
    yield _sheet(addresses.CURRENT, _none, posted.current_page, told.posted)
    yield _sheet(addresses.REPLACE, _none, posted.replace_page, told.posted)
    model = reference_view()
    entry = reference.reference_entry(model)
    yield _sheet(addresses.MODEL, reference.reference_anchors, reference.reference_page, model, entry)


def _none(_: object) -> frozenset[str]:
    return frozenset()


def _sheet(
    address: str,
    anchors: Callable[[Any], frozenset[str]],
    make: Callable[[Any, AddressBook], Page],
    view: Any,
    *entries: SearchEntry,
) -> Sheet:
    return Sheet(address, anchors(view), lambda book: make(view, book), entries)


def _index(view: IndexView) -> Sheet:
    return _sheet(view.address, lists.index_anchors, lists.index_page, view)


def _glossary(told: Told) -> Iterator[Sheet]:
    view = glossary_view(told.lab.lab)
    if view:
        entries = lists.glossary_entries(view)
        yield _sheet(addresses.GLOSSARY, lists.glossary_anchors, lists.glossary_page, view, *entries)


def _procedures(told: Told) -> Iterator[Sheet]:
    formulas = {formula.name: formula for formula in told.formulas}
    for study in told.studies:
        id = study.procedure.id
        standing = told.standings.get(id, StandingView())
        strip = strip_view(study)
        drawn = strip_html(strip) if strip else ""
        sources = told.sources.get(id.partition(".")[0])
        view = procedure_view(study, formulas, (), told.files, drawn, standing, sources)
        entry = procedure.procedure_entry(view)
        address = addresses.procedure_address(id)
        entries = (entry, *procedure.symptom_entries(view))
        yield _sheet(address, procedure.procedure_anchors, procedure.procedure_page, view, *entries)
        summary = hazards_view(study, standing.banners, told.files)
        yield _sheet(addresses.hazards_address(id), chemical.summary_anchors, chemical.summary_page, summary)
        if days := told.days.get(id):
            plan = day_page_view(study, days, standing.banners, told.files)
            yield _sheet(addresses.day_plan_address(id), day.day_anchors, day.day_page, plan)
        office = office_view(study, standing.banners, told.files)
        yield _sheet(addresses.office_address(id), overview.office_anchors, overview.office_page, office)


def _overview(told: Told) -> Iterator[Sheet]:
    view = lab_hazards_view(told.lab, told.files)
    entry = overview.overview_entry(view)
    yield _sheet(addresses.HAZARDS, overview.overview_anchors, overview.overview_page, view, entry)


def _places(told: Told) -> Iterator[Sheet]:
    for id in map(str, told.lab.lab.places):
        view = place_view(told.lab, id, told.studies)
        view = replace(view, banners=(*view.banners, *told.banners.get(("places", id), ())))
        yield _sheet(
            addresses.place_address(id), place.place_anchors, place.place_page, view, place.place_entry(view)
        )


def _chemicals(told: Told) -> Iterator[Sheet]:
    lab = told.lab.lab
    mixtures = (
        mixture_view(told.lab, id, told.studies, told.screenings.get(id), told.files)
        for id in map(str, lab.mixtures)
    )
    substances = (substance_view(told.lab, id, told.studies, told.files) for id in map(str, lab.substances))
    for found in (*mixtures, *substances):
        banners = told.banners.get((f"{found.kind}s", found.id), ())
        view = replace(found, banners=(*found.banners, *banners))
        address = chemical.chemical_address(view.kind, view.id)
        entry = chemical.chemical_entry(view)
        yield _sheet(address, chemical.chemical_anchors, chemical.chemical_page, view, entry)


def _calculators(told: Told) -> Iterator[Sheet]:
    for formula in told.formulas:
        view = with_formula(calculator_view(formula, told.lab, told.studies), formula)
        address = addresses.calculator_address(formula.name)
        entry = calculator.calculator_entry(view)
        yield _sheet(address, calculator.calculator_anchors, calculator.calculator_page, view, entry)


def _checks(told: Told) -> Iterator[Sheet]:
    for doc in told.docs:
        entry = checking.rule_entry(doc)
        yield _sheet(addresses.rule_address(doc.id), checking.rule_anchors, checking.rule_page, doc, entry)
    view = report_view(told.problems, told.not_made, told.studies)
    yield _sheet(addresses.REPORT, checking.report_anchors, checking.report_page, view)
