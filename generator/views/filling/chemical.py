"""The pages of substances and mixtures: declared hazards first, the screening beside them."""

from collections.abc import Iterable, Iterator

from generator.hazards import Edition, NotScreened, Screening, Step, statement_text
from generator.model import Mixture, Substance
from generator.study import LabStudy, Study
from generator.units import Window, show_number, show_quantity, show_window
from generator.views.addresses import place_address, procedure_address
from generator.views.chemical import (
    AmountView,
    ChemicalView,
    ScreeningRowView,
    ScreeningView,
    StatementView,
)
from generator.views.filling.labels import label_view
from generator.views.filling.words import chemical_link, thing_title, worn_sign
from generator.views.shown import FactView, LinkView

CAUTION = (
    "The supplier’s safety data sheet, the safety office, local codes and licensed practice stand above this "
    "page. It repeats what was declared; what was not declared, it cannot know."
)


def substance_view(study: LabStudy, id: str, studies: Iterable[Study]) -> ChemicalView:
    """A substance as bought."""
    substance: Substance = study.lab.substances[id]  # type: ignore[index]
    codes = tuple(map(str, substance.hazards))
    words = (substance.title, substance.cas or "", *codes)
    return ChemicalView(
        id,
        "substance",
        substance.title,
        label_view(codes, substance.not_classified, _edition(study), _from_sheet(substance)),
        facts=tuple(_substance_facts(substance)),
        never_with=tuple(never_with(study, substance.groups)),
        used_in=(*_mixtures_with(study, id), *_procedures_with(id, studies)),
        caution=CAUTION,
        search_text=" ".join(words),
        search_tags=tuple(word for word in (substance.cas or "", *codes) if word),
    )


def mixture_view(
    study: LabStudy, id: str, studies: Iterable[Study], screening: Screening | NotScreened | None = None
) -> ChemicalView:
    """A mixture made here, with what its composition implies where that was worked out."""
    mixture: Mixture = study.lab.mixtures[id]  # type: ignore[index]
    codes = tuple(map(str, mixture.hazards))
    parts = [thing_title(study.lab, str(part)) for part in mixture.made_of]
    return ChemicalView(
        id,
        "mixture",
        mixture.title,
        label_view(codes, mixture.not_classified, _edition(study), "As declared by this lab."),
        facts=tuple(_mixture_facts(study, mixture)),
        made_of=tuple(_made_of(study, mixture)),
        never_with=tuple(never_with(study, groups_of(study, id))),
        wear=tuple(worn_sign(study.lab, str(piece)) for piece in mixture.wear),
        if_contaminated=mixture.if_contaminated or "",
        screening=screening_view(screening, _edition(study)),
        used_in=(*_places_of(study, id), *_procedures_with(id, studies)),
        caution=CAUTION,
        search_text=" ".join((mixture.title, *codes, *parts)),
        search_tags=codes,
    )


def _edition(study: LabStudy) -> Edition:
    return Edition(study.lab.lab.ghs)


def _from_sheet(substance: Substance) -> str:
    sheet = substance.sheet
    if sheet is None:
        return "As declared; where the supplier’s sheet is held is not said."
    dated = f" of {sheet.dated.day} {sheet.dated:%B %Y}" if sheet.dated else ""
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


def groups_of(study: LabStudy, id: str) -> tuple[str, ...]:
    """The groups of a mixture's parts, through mixtures of mixtures."""
    lab = study.lab
    if id in lab.substances:
        return tuple(map(str, lab.substances[id].groups))  # type: ignore[index]
    found: dict[str, None] = {}
    mixture = lab.mixtures.get(id)  # type: ignore[call-overload]
    for part in mixture.made_of if mixture else ():
        if part != id:
            found.update(dict.fromkeys(groups_of(study, str(part))))
    return tuple(found)


def never_with(study: LabStudy, groups: Iterable[str]) -> Iterator[str]:
    """What these groups never meet, and why."""
    ours = set(map(str, groups))
    for pair in study.lab.keep_apart:
        others = [str(group) for group in pair.groups if group not in ours]
        if len(others) < len(pair.groups):
            yield f"{', '.join(others) or 'more of its own kind'}: {pair.because}"


def _places_of(study: LabStudy, id: str) -> Iterator[LinkView]:
    for place_id, place in study.lab.places.items():
        if place.holds == id:
            yield LinkView(place.title, place_address(str(place_id)))


def _mixtures_with(study: LabStudy, id: str) -> Iterator[LinkView]:
    for mixture_id, mixture in study.lab.mixtures.items():
        link = chemical_link(study.lab, str(mixture_id))
        if id in mixture.made_of and link:
            yield link


def _procedures_with(id: str, studies: Iterable[Study]) -> Iterator[LinkView]:
    for study in studies:
        if met_in(study, id):
            yield LinkView(study.procedure.title, procedure_address(study.procedure.id))


def met_in(study: Study, id: str) -> bool:
    """Whether a step of a procedure uses this, or works at a place that holds it."""
    for found in study.steps():
        place = study.place(found.step.at)
        if id in found.step.use or (place and place.holds == id):
            return True
    return False


def screening_view(screening: Screening | NotScreened | None, edition: Edition) -> ScreeningView | None:
    """What the composition implies, with its arithmetic; or why it could not be screened."""
    if screening is None:
        return None
    if isinstance(screening, NotScreened):
        said = "; ".join(f"{one.ingredient} {one.message}".strip() for one in screening.problems)
        return ScreeningView((), (), (), "", "Nothing follows from this about the hazards.", said)
    rows = tuple(
        ScreeningRowView(f"{step.rule} ({step.clause})", _working(step), step.limit, step.outcome)
        for step in screening.steps
    )
    return ScreeningView(
        tuple(StatementView(code, statement_text(code, edition) or "") for code in screening.statements),
        rows,
        tuple(f"{one.about}: {one.why}" for one in screening.unknown),
        screening.source,
        screening.caution,
    )


def _working(step: Step) -> str:
    terms = " + ".join(f"{term.working} ({term.name})" for term in step.terms)
    return f"{terms} = {show_number(step.total, digits=4)}" if terms else ""
