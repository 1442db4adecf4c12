"""The lab's first page, its indexes and its glossary."""

from collections.abc import Iterable, Iterator, Mapping

from generator.formulas import FIELDS, Formula
from generator.hazards import Edition, signal_word, statement_text
from generator.model import Lab, Mixture, Place, Substance
from generator.problems import RuleDoc
from generator.study import LabStudy
from generator.units import show_window
from generator.views import addresses
from generator.views.filling.place import out_of_use
from generator.views.filling.plan import clock_words
from generator.views.filling.procedure_rows import in_order, newest_rows
from generator.views.filling.words import (
    call_view,
    chemical_link,
    named,
    worn_sign,
)
from generator.views.home import HomeView
from generator.views.index import GlossaryView, GroupView, IndexView, RowView, TermView
from generator.views.shown import BannerView, CallView, EmergencyView, FactView, LinkView
from generator.views.summary import ProcedureSummary

_HELP = (
    ("eyewash", "Eyewash"),
    ("shower", "Shower"),
    ("first_aid", "First aid"),
    ("extinguisher", "Extinguisher"),
    ("spill_kit", "Spill kit"),
)


def home_view(
    study: LabStudy, summaries: Iterable[ProcedureSummary], banners: tuple[BannerView, ...] = ()
) -> HomeView:
    """Whom to call, what to do first, when the lab is open, what is done here, what is posted and changed."""
    lab, room, shown = study.lab, study.lab.lab, tuple(summaries)
    return HomeView(
        room.title or room.name,
        f"{room.name}, room {room.room}" if room.title else f"Room {room.room}",
        room.help.emergency or "Not said. Ask before you start any work.",
        help_facts(lab),
        tuple(_calls(lab)),
        emergency_views(lab),
        tuple(
            FactView(session.name, f"{clock_words(session.from_)} to {clock_words(session.until)}")
            for session in room.sessions
        ),
        tuple(worn_sign(lab, str(piece)) for piece in room.base_wear),
        tuple(one.posted_row for one in shown),
        banners=banners,
        changes=tuple(newest_rows(shown)),
    )


def help_facts(lab: Lab) -> tuple[FactView, ...]:
    """Where things are that help."""
    values = ((label, getattr(lab.lab.help, field)) for field, label in _HELP)
    return tuple(FactView(label, value) for label, value in values if value)


def emergency_views(lab: Lab) -> tuple[EmergencyView, ...]:
    """What is done first, and then, for the whole room."""
    return tuple(EmergencyView(one.when, one.first, one.then or "") for one in lab.emergencies)


def _calls(lab: Lab) -> Iterator[CallView]:
    for id, role in lab.roles.items():
        call = call_view(lab, str(id))
        if role.reach and call:
            yield call


def places_index(study: LabStudy) -> IndexView:
    """The numbered places, then those round them."""
    rows = [(place.number is not None, _place_row(id, place)) for id, place in in_order(study.lab)]
    groups = (
        GroupView("Stations", "the_stations", tuple(row for numbered, row in rows if numbered)),
        GroupView("Around them", "around_them", tuple(row for numbered, row in rows if not numbered)),
    )
    return IndexView(addresses.PLACES, "Places", "", tuple(group for group in groups if group.rows))


def _place_row(id: str, place: Place) -> RowView:
    detail = ", ".join(
        part
        for part in (
            show_window(place.temperature) if place.temperature else "",
            f"the part comes in {place.arrive}" if place.arrive != "any" else "",
            out_of_use(place),
        )
        if part
    )
    link = LinkView(place.title, addresses.place_address(id))
    number = "" if place.number is None else str(place.number)
    return RowView(link, number, detail, show_window(place.time) if place.time else "")


def chemicals_index(study: LabStudy) -> IndexView:
    """Mixtures made here, then substances as bought, each with its signal word."""
    lab = study.lab
    mixtures = tuple(
        _chemical_row(
            study, str(id), LinkView(one.title, addresses.mixture_address(str(id))), one.not_classified
        )
        for id, one in lab.mixtures.items()
    )
    substances = tuple(
        _chemical_row(
            study, str(id), LinkView(one.title, addresses.substance_address(str(id))), one.not_classified
        )
        for id, one in lab.substances.items()
    )
    groups = (
        GroupView("Made here", "made_here", mixtures),
        GroupView("As bought", "as_bought", substances),
        *_by_statement(study),
    )
    lead = "What is declared. The supplier’s safety data sheet stands above every page here."
    return IndexView(addresses.CHEMICALS, "Substances", lead, tuple(group for group in groups if group.rows))


def _by_statement(study: LabStudy) -> Iterator[GroupView]:
    lab, edition = study.lab, Edition(study.lab.lab.ghs)
    nouns: dict[str, Mixture | Substance] = {str(id): mixture for id, mixture in lab.mixtures.items()}
    nouns |= {str(id): substance for id, substance in lab.substances.items()}
    codes = sorted({str(code) for noun in nouns.values() for code in noun.hazards if code[:1] in "HE"})
    for code in codes:
        rows = tuple(
            _chemical_row(study, id, link, noun.not_classified)
            for id, noun in nouns.items()
            if code in noun.hazards and (link := chemical_link(lab, id))
        )
        text = statement_text(code, edition) or "no text in this edition"
        yield GroupView(f"{code}: {text}", f"with_{code}", rows)


def _chemical_row(study: LabStudy, id: str, link: LinkView, not_classified: bool) -> RowView:
    codes = study.statements_of(id)
    end = signal_word(tuple(code for code in codes if code[:1] in "HE"))
    unknown = "" if codes else ("not classified" if not_classified else "hazards not declared")
    return RowView(link, detail=", ".join(codes) or unknown, end=end)


def calculators_index(formulas: Iterable[Formula]) -> IndexView:
    """Every formula by its field, each with what it decides; a lab's own come first."""
    left = {one.name: one for one in formulas}
    fields = [
        (title, tuple(left.pop(one.name) for one in found if one.name in left)) for title, found in FIELDS
    ]
    own = ("Of this lab", tuple(left.values()))
    groups = tuple(
        GroupView(title, f"field_{title.lower().replace(' ', '_')}", tuple(map(_formula_row, found)))
        for title, found in (own, *fields)
        if found
    )
    lead = (
        "Each works out one number, with its source and a worked example. None replaces the supplier’s sheet."
    )
    return IndexView(addresses.CALCULATORS, "Calculators", lead, groups)


def _formula_row(one: Formula) -> RowView:
    return RowView(LinkView(one.title, addresses.calculator_address(one.name)), detail=one.decides)


def rules_index(docs: Iterable[RuleDoc], subjects: Mapping[str, str]) -> IndexView:
    """Every rule by its subject."""
    found = tuple(docs)
    groups = tuple(
        GroupView(
            subjects.get(subject, named(subject)),
            f"about_{subject}",
            tuple(_rule_row(d) for d in found if d.subject == subject),
        )
        for subject in dict.fromkeys(doc.subject for doc in found)
    )
    lead = "What the checks look for. A check proves only what was declared."
    return IndexView(addresses.CHECKS, "Checks", lead, groups)


def _rule_row(doc: RuleDoc) -> RowView:
    return RowView(LinkView(doc.id, addresses.rule_address(doc.id)), detail=doc.what, end=str(doc.level))


def glossary_view(lab: Lab) -> GlossaryView | None:
    """The lab's words in their order; None where it has none."""
    terms = tuple(
        TermView(str(id), entry.term or named(str(id)), entry.means, tuple(map(str, entry.not_)))
        for id, entry in lab.glossary.items()
    )
    return GlossaryView(tuple(sorted(terms, key=lambda term: term.term.lower()))) if terms else None
