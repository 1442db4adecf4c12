"""The hazard summary of a procedure: all that it meets, in an order that a sheet can be read beside."""

from collections.abc import Iterator

from generator.hazards import Edition
from generator.model import Mixture, Place, Substance
from generator.study import Study
from generator.units import show_quantity
from generator.views.addresses import procedure_address
from generator.views.chemical import HazardHeadingView, HazardItemView, HazardSummaryView, LabelView
from generator.views.filling.chemical import CAUTION, groups_of, never_with
from generator.views.filling.hazard_words import word_sign
from generator.views.filling.home import emergency_views, help_facts
from generator.views.filling.labels import label_view
from generator.views.filling.words import chemical_link, joined, low, role_title, thing_title
from generator.views.shown import BannerView, LinkView, SignView


def hazards_view(study: Study, banners: tuple[BannerView, ...] = ()) -> HazardSummaryView:
    """Everything met at a place or used in a step, in the order met."""
    lab = study.lab
    met = _met(study)
    items = tuple(item for id, steps in met.items() if (item := _item(study, id, steps)))
    return HazardSummaryView(
        study.procedure.id,
        f"Hazards: {low(study.procedure.title)}",
        LinkView("Back to the procedure", procedure_address(study.procedure.id)),
        items,
        tuple(_words(study)),
        emergency_views(lab),
        help_facts(lab),
        CAUTION,
        banners,
    )


def _met(study: Study) -> dict[str, list[str]]:
    """Mixtures and substances with the numbers of the steps that meet them."""
    met: dict[str, list[str]] = {}
    for number, step in enumerate(study.procedure.steps, 1):
        place = study.place(step.at)
        for id in (*([str(place.holds)] if place and place.holds else []), *map(str, step.use)):
            met.setdefault(id, []).append(str(number))
    return met


def _words(study: Study) -> Iterator[SignView]:
    places = dict.fromkeys(str(found.step.at) for found in study.steps() if found.step.at)
    for id in places:
        place = study.place(id)
        for word in place.hazards if place else ():
            yield word_sign(study.lab, str(word), place.title if place else "")


def _item(study: Study, id: str, steps: list[str]) -> HazardItemView | None:
    lab = study.lab
    noun = lab.mixtures.get(id) or lab.substances.get(id)  # type: ignore[call-overload]
    link = chemical_link(lab, id)
    if noun is None or link is None:
        return None
    label = label_view(
        tuple(map(str, noun.hazards)), noun.not_classified, Edition(lab.lab.ghs), "As declared."
    )
    where = f"met at step{'s' * (len(steps) > 1)} {_span(steps)}"
    strength = show_quantity(noun.strength) if isinstance(noun, Substance) and noun.strength else ""
    headings = tuple(_headings(study, id, noun, label))
    return HazardItemView(
        id, noun.title, LinkView("its own page", link.address), label, where, strength, headings
    )


def _span(steps: list[str]) -> str:
    return steps[0] if len(steps) == 1 else f"{steps[0]} to {steps[-1]}"


def _headings(
    study: Study, id: str, noun: Mixture | Substance, label: LabelView
) -> Iterator[HazardHeadingView]:
    """The order of the 16 headings of a safety data sheet, as far as a bench needs them."""
    by_group: dict[str, list[str]] = {}
    for line in label.precautions:
        by_group.setdefault(line.code[:2], []).append(f"{line.text} ({line.code})")
    places = [place for place in study.lab.places.values() if place.holds == id]
    yield HazardHeadingView("Composition", tuple(_composition(study, noun)))
    yield HazardHeadingView("First action", tuple(by_group.get("P3", ())))
    yield HazardHeadingView("Spill", tuple(_spill(study, noun)))
    yield HazardHeadingView("Handling", tuple(by_group.get("P2", ())))
    yield HazardHeadingView("Worn here", tuple(_worn(study, noun, places)))
    yield HazardHeadingView("Storage", (*_kept(noun), *by_group.get("P4", ())))
    yield HazardHeadingView("Never with", tuple(never_with(study, groups_of(study, id))))
    yield HazardHeadingView("Waste", (*_waste(study, id, noun), *by_group.get("P5", ())))
    yield HazardHeadingView("Supplier’s sheet", tuple(_sheet(study, noun)))
    yield HazardHeadingView("Whom to ask", tuple(_ask(study, places)))


def _composition(study: Study, noun: Mixture | Substance) -> Iterator[str]:
    if isinstance(noun, Substance):
        yield (
            f"CAS number {noun.cas}" if noun.cas else "Bought as a mixture; its parts are not declared here."
        )
        return
    for part, portion in noun.made_of.items():
        amount = show_quantity(portion.amount) if portion.amount else "the rest"
        yield f"{thing_title(study.lab, str(part))}: {amount}"


def _spill(study: Study, noun: Mixture | Substance) -> Iterator[str]:
    kit = study.lab.lab.help.spill_kit
    if kit:
        yield f"Spill kit: {kit}"
    if isinstance(noun, Mixture) and noun.if_contaminated:
        yield f"If something else got in: {noun.if_contaminated}"


def _worn(study: Study, noun: Mixture | Substance, places: list[Place]) -> Iterator[str]:
    wear = noun.wear if isinstance(noun, Mixture) else ()
    pieces = dict.fromkeys((*map(str, study.lab.lab.base_wear), *map(str, wear)))
    for place in places:
        pieces.update(dict.fromkeys(map(str, place.wear)))
    if pieces:
        yield joined(thing_title(study.lab, piece) for piece in pieces)
    for place in places:
        if place.extraction:
            yield f"Extraction: {place.extraction}"


def _kept(noun: Mixture | Substance) -> Iterator[str]:
    if isinstance(noun, Substance) and noun.kept and noun.kept.cupboard:
        yield f"In the {noun.kept.cupboard}"


def _waste(study: Study, id: str, noun: Mixture | Substance) -> Iterator[str]:
    lab = study.lab
    wanted = {str(noun.leftovers)} if isinstance(noun, Mixture) and noun.leftovers else set()
    for name, container in lab.waste.items():
        if str(name) in wanted or id in container.takes:
            cap = f", cap {container.cap}" if container.cap else ""
            full = f", full at {show_quantity(container.full_at)}" if container.full_at else ""
            pickup = f", fetched by the {low(role_title(lab, container.pickup))}" if container.pickup else ""
            never = f" Never: {container.never}." if container.never else ""
            yield f"{container.title}{cap}{full}{pickup}.{never}"


def _sheet(study: Study, noun: Mixture | Substance) -> Iterator[str]:
    parts = (
        [noun]
        if isinstance(noun, Substance)
        else [part for id in noun.made_of if (part := study.lab.substances.get(id))]
    )
    for part in parts:
        sheet = part.sheet
        if sheet and sheet.held_at:
            dated = f", dated {sheet.dated.day} {sheet.dated:%B %Y}" if sheet.dated else ""
            yield f"{part.title}: {sheet.held_at}{dated}"


def _ask(study: Study, places: list[Place]) -> Iterator[str]:
    roles = dict.fromkeys(str(place.keeper) for place in places if place.keeper)
    questions = study.lab.lab.help.waste_questions
    for role in (*roles, *([str(questions)] if questions else [])):
        found = study.role(role)
        if found:
            yield f"{found.title}{f': {found.reach}' if found.reach else ''}"
