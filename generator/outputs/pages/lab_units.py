"""The lab's own pages in units, each with all that it is made from beside the lab, so that it can be kept."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace

from generator.formulas import Formula
from generator.hazards import NotScreened, Screening
from generator.outputs.formula_page import with_formula
from generator.outputs.pages import (
    calculator,
    checking,
    chemical,
    lists,
    overview,
    place,
    posted,
    reference,
)
from generator.outputs.pages.sheets import Sheet, no_anchors, sheet
from generator.problems import Problem, RuleDoc
from generator.study import LabStudy
from generator.views import addresses
from generator.views.chemical import ChemicalView
from generator.views.filling.calculator import calculator_view
from generator.views.filling.chemical import mixture_view, substance_view
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
from generator.views.filling.place import place_view
from generator.views.filling.procedure_rows import procedures_index
from generator.views.filling.report import report_view, role_words
from generator.views.index import IndexView
from generator.views.posted import PostedView
from generator.views.shown import BannerView, LinkView
from generator.views.summary import ProcedureSummary


@dataclass(frozen=True, slots=True)
class Unit:
    """Pages made together: a name, what they are made from beside the lab, and how from the lab."""

    name: str
    told: tuple[object, ...]
    sheets: Callable[[LabStudy], Iterable[Sheet]]


@dataclass(frozen=True)
class Told:
    """All that the lab's pages are told from.

    `summaries` are of every procedure that is shown, `screenings` by the id of a mixture, `files` the paths
    of the site's files, `banners` by noun and id.
    """

    lab: LabStudy
    summaries: tuple[ProcedureSummary, ...]
    formulas: tuple[Formula, ...] = ()
    docs: tuple[RuleDoc, ...] = ()
    subjects: Mapping[str, str] = field(default_factory=dict)
    problems: tuple[Problem, ...] = ()
    not_made: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    posted: PostedView = field(default_factory=lambda: PostedView((), ()))
    screenings: Mapping[str, Screening | NotScreened] = field(default_factory=dict)
    files: frozenset[str] = frozenset()
    banners: Mapping[tuple[str, str], tuple[BannerView, ...]] = field(default_factory=dict)


def front_units(told: Told) -> Iterator[Unit]:
    """The pages of the navigation, in its order."""
    every = told.summaries
    rows = tuple((one.posted_row, one.newest, one.is_first) for one in every)
    yield Unit("home", rows, lambda lab: (_home(lab, every),))
    listed = tuple((one.row, one.who, one.places, one.codes, one.symptoms) for one in every)
    yield _index("procedures", lambda lab: procedures_index(lab, every), listed)
    if told.lab.lab.places:
        yield _index("places", places_index)
    if told.lab.lab.substances or told.lab.lab.mixtures:
        yield _index("chemicals", chemicals_index)
        yield Unit("hazards", (_below(told, addresses.HAZARDS),), lambda lab: (_overview(lab, told.files),))
    if told.formulas:
        yield _index("calculators", lambda _: calculators_index(told.formulas))
    cards = sheet(addresses.CARDS, posted.posted_anchors, posted.posted_page, told.posted)
    yield Unit("cards", (told.posted,), lambda _: (cards,))
    yield Unit("glossary", (), _glossary)
    yield _index("rules", lambda _: rules_index(told.docs, told.subjects))


def back_units(told: Told) -> Iterator[Unit]:
    """The pages of the lab that stand in no navigation."""
    yield from _places(told)
    yield from _chemicals(told)
    yield from _calculators(told)
    yield from _checks(told)
    current = sheet(addresses.CURRENT, no_anchors, posted.current_page, told.posted)
    taken = sheet(addresses.REPLACE, no_anchors, posted.replace_page, told.posted)
    yield Unit("current", (told.posted,), lambda _: (current, taken))
    yield Unit("model", (), _model)


def _index(name: str, view: Callable[[LabStudy], IndexView], told: tuple[object, ...] = ()) -> Unit:
    def sheets(lab: LabStudy) -> tuple[Sheet, ...]:
        found = view(lab)
        return (sheet(found.address, lists.index_anchors, lists.index_page, found),)

    return Unit(f"index {name}", told, sheets)


def _home(lab: LabStudy, summaries: tuple[ProcedureSummary, ...]) -> Sheet:
    return sheet(addresses.HOME, lists.home_anchors, lists.home_page, home_view(lab, summaries))


def _below(told: Told, address: str) -> tuple[str, ...]:
    """The files that lie below an address."""
    return tuple(sorted(path for path in told.files if path.startswith(f"{address}/")))


def _overview(lab: LabStudy, files: frozenset[str]) -> Sheet:
    view = lab_hazards_view(lab, files)
    entry = overview.overview_entry(view)
    return sheet(addresses.HAZARDS, overview.overview_anchors, overview.overview_page, view, entry)


def _glossary(lab: LabStudy) -> Iterator[Sheet]:
    view = glossary_view(lab.lab)
    if view:
        entries = lists.glossary_entries(view)
        yield sheet(addresses.GLOSSARY, lists.glossary_anchors, lists.glossary_page, view, *entries)


def _places(told: Told) -> Iterator[Unit]:
    steps: dict[str, list[LinkView]] = {}
    for one in told.summaries:
        for id, link in one.places:
            steps.setdefault(id, []).append(link)
    for id in map(str, told.lab.lab.places):
        yield _place(id, tuple(steps.get(id, ())), told.banners.get(("places", id), ()))


def _place(id: str, steps: tuple[LinkView, ...], banners: tuple[BannerView, ...]) -> Unit:
    def sheets(lab: LabStudy) -> tuple[Sheet, ...]:
        found = place_view(lab, id, steps)
        view = replace(found, banners=(*found.banners, *banners))
        address, entry = addresses.place_address(id), place.place_entry(view)
        return (sheet(address, place.place_anchors, place.place_page, view, entry),)

    return Unit(f"place {id}", (steps, banners), sheets)


def _chemicals(told: Told) -> Iterator[Unit]:
    met: dict[str, list[LinkView]] = {}
    for one in told.summaries:
        for id in one.chemicals:
            met.setdefault(id, []).append(one.row.link)
    for id in map(str, told.lab.lab.mixtures):
        yield _mixture(told, id, tuple(met.get(id, ())))
    for id in map(str, told.lab.lab.substances):
        yield _substance(told, id, tuple(met.get(id, ())))


def _mixture(told: Told, id: str, met: tuple[LinkView, ...]) -> Unit:
    screening, address = told.screenings.get(id), addresses.mixture_address(id)
    banners = told.banners.get(("mixtures", id), ())
    return Unit(
        f"mixture {id}",
        (met, screening, _below(told, address), banners),
        lambda lab: (_chemical(mixture_view(lab, id, met, screening, told.files), banners),),
    )


def _substance(told: Told, id: str, met: tuple[LinkView, ...]) -> Unit:
    banners = told.banners.get(("substances", id), ())
    return Unit(
        f"substance {id}",
        (met, _below(told, addresses.substance_address(id)), banners),
        lambda lab: (_chemical(substance_view(lab, id, met, told.files), banners),),
    )


def _chemical(found: ChemicalView, banners: tuple[BannerView, ...]) -> Sheet:
    view = replace(found, banners=(*found.banners, *banners))
    address, entry = chemical.chemical_address(view.kind, view.id), chemical.chemical_entry(view)
    return sheet(address, chemical.chemical_anchors, chemical.chemical_page, view, entry)


def _calculators(told: Told) -> Iterator[Unit]:
    for formula in told.formulas:
        users = tuple(one for one in told.summaries if formula.name in one.formulas)
        links = tuple((one.row.link, one.units) for one in users)
        yield Unit(f"calculator {formula.name}", links,
                   lambda lab, formula=formula, users=users: (_calculator(lab, formula, users),))  # type: ignore[misc]  # fmt: skip


def _calculator(lab: LabStudy, formula: Formula, users: tuple[ProcedureSummary, ...]) -> Sheet:
    view = with_formula(calculator_view(formula, lab, users), formula)
    address, entry = addresses.calculator_address(formula.name), calculator.calculator_entry(view)
    return sheet(address, calculator.calculator_anchors, calculator.calculator_page, view, entry)


def _checks(told: Told) -> Iterator[Unit]:
    for doc in told.docs:
        address, entry = addresses.rule_address(doc.id), checking.rule_entry(doc)
        page = sheet(address, checking.rule_anchors, checking.rule_page, doc, entry)
        yield Unit(f"rule {doc.id}", (), lambda _, page=page: (page,))  # type: ignore[misc]
    found = report_view(told.problems, told.not_made, told.summaries, role_words(told.lab.lab))
    report = sheet(addresses.REPORT, checking.report_anchors, checking.report_page, found)
    yield Unit("report", (found,), lambda _: (report,))


def _model(_: LabStudy) -> tuple[Sheet, ...]:
    model = reference_view()
    entry = reference.reference_entry(model)
    return (sheet(addresses.MODEL, reference.reference_anchors, reference.reference_page, model, entry),)
