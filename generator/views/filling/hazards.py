"""The hazard summary of a procedure: all that it meets, in an order that a sheet can be read beside."""

from collections.abc import Iterator

from generator.hazards import Edition
from generator.model import Substance, Text
from generator.study import LabStudy, Study
from generator.units import show_quantity
from generator.views.addresses import office_address, procedure_address, sheet_path
from generator.views.chemical import HazardItemView, HazardSummaryView, LabelView
from generator.views.filling.chemical import CAUTION
from generator.views.filling.hazard_words import word_sign, words_of
from generator.views.filling.headings import headings
from generator.views.filling.home import emergency_views, help_facts
from generator.views.filling.labels import label_view
from generator.views.filling.waste_words import is_vented
from generator.views.filling.words import chemical_link, low, thing_title
from generator.views.shown import BannerView, FactView, LinkView, SignView


def hazards_view(
    study: Study, banners: tuple[BannerView, ...] = (), files: frozenset[str] = frozenset()
) -> HazardSummaryView:
    """Everything met at a place or used in a step, in the order met; `files` are the site's."""
    lab, address = study.lab, procedure_address(study.procedure.id)
    printed = sheet_path(address, "hazards")
    met = met_steps(study)
    items = tuple(item for id, steps in met.items() if (item := _item(study, id, steps)))
    return HazardSummaryView(
        study.procedure.id,
        f"Hazards: {low(study.procedure.title)}",
        LinkView("Back to the procedure", address),
        items,
        tuple(_words(study)),
        emergency_views(lab),
        help_facts(lab),
        CAUTION,
        banners,
        LinkView("Sheet for the safety office", office_address(study.procedure.id)),
        (FactView("This summary, A4, PDF", printed),) if printed in files else (),
    )


def met_steps(study: Study) -> dict[str, list[str]]:
    """Mixtures and substances with the numbers of the steps that meet them."""
    met: dict[str, list[str]] = {}
    for number, step in enumerate(study.procedure.steps, 1):
        place = study.place(step.at)
        near = (place.holds if place else None, *step.use, step.into)
        for id in dict.fromkeys(str(id) for id in near if id):
            met.setdefault(id, []).append(str(number))
    return met


def _words(study: Study) -> Iterator[SignView]:
    places = dict.fromkeys(str(found.step.at) for found in study.steps() if found.step.at)
    for id in places:
        place = study.place(id)
        for word in place.hazards if place else ():
            yield word_sign(study.lab, str(word), place.title if place else "")
    for id in met_steps(study):
        yield from words_of(study, id, thing_title(study.lab, id))


def _item(study: Study, id: str, steps: list[str]) -> HazardItemView | None:
    lab = study.lab
    noun = lab.mixtures.get(id) or lab.substances.get(id)  # type: ignore[call-overload]
    link = chemical_link(lab, id)
    if noun is None or link is None:
        return None
    where = f"met at step{'s' * (len(steps) > 1)} {_span(steps)}"
    strength = show_quantity(noun.strength) if isinstance(noun, Substance) and noun.strength else ""
    own = LinkView("its own page", link.address)
    label = study.answers.of(study, _label, id)
    return HazardItemView(id, noun.title, own, label, where, strength, headings(study, id, noun))


def _label(study: LabStudy, id: str) -> LabelView:
    lab = study.lab
    noun = lab.mixtures.get(Text(id)) or lab.substances[Text(id)]
    codes, edition = tuple(map(str, noun.hazards)), Edition(lab.lab.ghs)
    return label_view(codes, noun.not_classified, edition, "As declared.", is_vented(study, id))


def _span(steps: list[str]) -> str:
    return steps[0] if len(steps) == 1 else f"{steps[0]} to {steps[-1]}"
