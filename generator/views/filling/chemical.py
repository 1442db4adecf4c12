"""The pages of substances and mixtures: declared hazards first, the screening beside them."""

from collections.abc import Iterator

from generator.hazards import Edition, NotScreened, Screening
from generator.model import Mixture, Substance
from generator.study import LabStudy
from generator.units import Window, show_quantity, show_window
from generator.views.addresses import labels_kind, place_address, sheet_path
from generator.views.chemical import AmountView, ChemicalView
from generator.views.filling.headings import headings
from generator.views.filling.home import help_facts
from generator.views.filling.labels import label_view
from generator.views.filling.screening import screening_view
from generator.views.filling.sheets_held import day_words
from generator.views.filling.waste_words import is_vented
from generator.views.filling.words import chemical_link, thing_title, worn_sign
from generator.views.shown import FactView, LinkView

CAUTION = (
    "The supplier’s safety data sheet, the safety office, local codes and licensed practice stand above this "
    "page. It repeats what was declared; what was not declared, it cannot know."
)


def substance_view(
    study: LabStudy, id: str, met_in: tuple[LinkView, ...] = (), files: frozenset[str] = frozenset()
) -> ChemicalView:
    """A substance as bought; `met_in` leads to procedures, `files` are the paths of the site's files."""
    substance: Substance = study.lab.substances[id]  # type: ignore[index]
    codes = tuple(map(str, substance.hazards))
    words = (substance.title, substance.cas or "", *codes)
    return ChemicalView(
        id,
        "substance",
        substance.title,
        label_view(codes, substance.not_classified, _edition(study), _from_sheet(substance)),
        facts=tuple(_substance_facts(substance)),
        headings=headings(study, id, substance),
        used_in=(*_mixtures_with(study, id), *met_in),
        files=chemical_files(f"substances/{id}", files),
        help=help_facts(study.lab),
        caution=CAUTION,
        search_text=" ".join(words),
        search_tags=tuple(word for word in (substance.cas or "", *codes) if word),
    )


def mixture_view(
    study: LabStudy,
    id: str,
    met_in: tuple[LinkView, ...] = (),
    screening: Screening | NotScreened | None = None,
    files: frozenset[str] = frozenset(),
) -> ChemicalView:
    """A mixture made here, with what its composition implies where that was worked out."""
    mixture: Mixture = study.lab.mixtures[id]  # type: ignore[index]
    codes = tuple(map(str, mixture.hazards))
    parts = [thing_title(study.lab, str(part)) for part in mixture.made_of]
    return ChemicalView(
        id,
        "mixture",
        mixture.title,
        label_view(
            codes, mixture.not_classified, _edition(study), "As declared by this lab.", is_vented(study, id)
        ),
        facts=tuple(_mixture_facts(study, mixture)),
        made_of=tuple(_made_of(study, mixture)),
        headings=headings(study, id, mixture),
        wear=tuple(worn_sign(study.lab, str(piece)) for piece in mixture.wear),
        if_contaminated=mixture.if_contaminated or "",
        screening=screening_view(study, codes, screening),
        used_in=(*_places_of(study, id), *met_in),
        files=chemical_files(f"mixtures/{id}", files),
        help=help_facts(study.lab),
        caution=CAUTION,
        search_text=" ".join((mixture.title, *codes, *parts)),
        search_tags=codes,
    )


_FILES = (
    ("hazards", "Hazard summary, A4, PDF"),
    *((labels_kind("labels", paper), f"Container labels on {paper}, PDF") for paper in ("A4", "Letter")),
)


def chemical_files(address: str, files: frozenset[str]) -> tuple[FactView, ...]:
    """The printed forms of a page that this build has: label and path."""
    paths = ((label, sheet_path(address, kind)) for kind, label in _FILES)
    return tuple(FactView(label, path) for label, path in paths if path in files)


def _edition(study: LabStudy) -> Edition:
    return Edition(study.lab.lab.ghs)


def _from_sheet(substance: Substance) -> str:
    sheet = substance.sheet
    if sheet is None:
        return "As declared; where the supplier’s sheet is held is not said."
    dated = f" of {day_words(sheet.dated)}" if sheet.dated else ""
    held = f", held at {sheet.held_at}" if sheet.held_at else ""
    return f"As declared from the supplier’s sheet{dated}{held}."


def _substance_facts(substance: Substance) -> Iterator[FactView]:
    yield FactView(
        "CAS number", substance.cas or ("bought as a mixture" if substance.mixture else "not said")
    )
    if substance.strength:
        yield FactView("Strength", show_quantity(substance.strength))
    if substance.density:
        yield FactView("Density", show_quantity(substance.density))
    if substance.kept and substance.kept.amount:
        where = f" in the {substance.kept.cupboard}" if substance.kept.cupboard else ""
        yield FactView("Kept here", f"{show_quantity(substance.kept.amount)}{where}")
    if substance.sheet and substance.sheet.held_at:
        yield FactView("Supplier’s sheet", substance.sheet.held_at)
    if substance.needs_extraction:
        yield FactView("Extraction", "needed")


def _mixture_facts(study: LabStudy, mixture: Mixture) -> Iterator[FactView]:
    if mixture.volume:
        yield FactView("Volume", show_quantity(mixture.volume))
    if mixture.density:
        yield FactView("Density", show_quantity(mixture.density))
    if isinstance(mixture.ph, Window):
        yield FactView("pH", show_window(mixture.ph))
    if mixture.use_within:
        yield FactView("Use within", show_quantity(mixture.use_within))
    if mixture.renew:
        yield FactView("Renew", mixture.renew)
    if mixture.cost_to_replace:
        yield FactView("Why we are strict here", f"{mixture.cost_to_replace} to replace")
    if mixture.leftovers:
        yield FactView("Leftovers into", thing_title(study.lab, str(mixture.leftovers)))


def _made_of(study: LabStudy, mixture: Mixture) -> Iterator[AmountView]:
    for id, portion in mixture.made_of.items():
        counted = f" as {portion.counted_as}" if portion.counted_as else ""
        amount = "the rest" if portion.amount is None else f"{show_quantity(portion.amount)}{counted}"
        yield AmountView(thing_title(study.lab, str(id)), amount, chemical_link(study.lab, str(id)))


def _places_of(study: LabStudy, id: str) -> Iterator[LinkView]:
    for place_id, place in study.lab.places.items():
        if place.holds == id:
            yield LinkView(place.title, place_address(str(place_id)))


def _mixtures_with(study: LabStudy, id: str) -> Iterator[LinkView]:
    for mixture_id, mixture in study.lab.mixtures.items():
        link = chemical_link(study.lab, str(mixture_id))
        if id in mixture.made_of and link:
            yield link
