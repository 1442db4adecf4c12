"""Labels for bottles and baths, and for waste containers, from what the lab declares."""

from collections.abc import Iterable, Iterator

from generator.hazards import Edition
from generator.model import Container, Lab, Mixture, Portion, Substance
from generator.study import LabStudy
from generator.units import show_quantity
from generator.views.chemical import LabelView
from generator.views.filling.hazard_words import words_of
from generator.views.filling.labels import label_view
from generator.views.filling.sheets_held import lasting_words
from generator.views.filling.waste_streams import behind, declared_codes
from generator.views.filling.waste_words import is_vented
from generator.views.filling.words import joined, low, role_title, thing_title
from generator.views.labels import ContainerLabelView

CAUTION = "The supplier’s sheet, the safety office, local codes and licensed practice stand above this label."
NEVER_SEALED = "Gives off gas. Vented cap only, never sealed."
_UNKNOWN = "Hazards not known. Treat it as dangerous and ask."


def chemical_label(study: LabStudy, id: str) -> ContainerLabelView:
    """The label of a substance that was decanted, or of a mixture made here; KeyError for an unknown id."""
    noun: Substance | Mixture = study.lab.mixtures.get(id) or study.lab.substances[id]  # type: ignore[call-overload,index]
    edition = Edition(study.lab.lab.ghs)
    vented = is_vented(study, id)
    label = label_view(tuple(map(str, noun.hazards)), noun.not_classified, edition, "", vented)
    return ContainerLabelView(
        noun.title,
        _under(study, noun),
        label,
        tuple(_lines(study, noun)),
        ("Filled", "By", "Use by"),
        CAUTION,
        stop=_stop(study, (id,), vented, bool(label.unknown and not label.statements)),
    )


def _stop(study: LabStudy, ids: Iterable[str], vented: bool, unknown: bool, never: str = "") -> str:
    """What no statement says, in bold under them."""
    words = dict.fromkeys(f"{sign.title}." for id in ids for sign in words_of(study, id))
    rest = (NEVER_SEALED if vented else "", never, _UNKNOWN if unknown else "")
    return " ".join(text for text in (*words, *rest) if text)


def _under(study: LabStudy, noun: Substance | Mixture) -> str:
    if isinstance(noun, Substance):
        parts = (
            f"CAS {noun.cas}"
            if noun.cas
            else "bought as a mixture"
            if noun.mixture
            else "CAS number not said",
            show_quantity(noun.strength) if noun.strength else "",
        )
        return ", ".join(part for part in parts if part)
    shares = (
        f"{low(thing_title(study.lab, str(part)))}{_share(portion)}" for part, portion in noun.made_of.items()
    )
    return "; ".join(shares) or "what it is made of is not said"


def _share(portion: Portion) -> str:
    """What an amount is counted as belongs to it ("18 g/L as H2SO4"), for the bottle is not all acid."""
    if portion.amount is None:
        return ""
    counted = f" as {portion.counted_as}" if portion.counted_as else ""
    return f": {show_quantity(portion.amount)}{counted}"


def _lines(study: LabStudy, noun: Substance | Mixture) -> Iterator[str]:
    """Who stands behind it, and whom to call."""
    lab = study.lab
    if isinstance(noun, Substance):
        yield f"Supplier and sheet: {lasting_words(noun).rstrip('.')}."
    else:
        yield f"Made in {_room(lab)}."
        if noun.use_within:
            yield f"Use within {show_quantity(noun.use_within)}."
    if lab.lab.help.emergency:
        yield f"Emergency: {lab.lab.help.emergency}."


def _room(lab: Lab) -> str:
    return f"{lab.lab.name}, room {lab.lab.room}"


def waste_labels(study: LabStudy) -> tuple[ContainerLabelView, ...]:
    """One label for each container that somebody fetches; a drain has none."""
    found = study.lab.waste.values()
    return tuple(_waste_label(study, one) for one in found if not one.to_drain)


def _waste_label(study: LabStudy, one: Container) -> ContainerLabelView:
    lab, vented = study.lab, one.cap == "vented"
    takes = joined(dict.fromkeys(low(thing_title(lab, str(thing))) for thing in one.takes))
    never = f"Never put in: {one.never}." if one.never else ""
    known = all(_declared(study, id) for id in behind(study, one))
    return ContainerLabelView(
        one.title,
        f"Takes {takes}." if takes else "What it takes is not declared.",
        _waste_elements(study, one),
        tuple(_waste_lines(lab, one)),
        ("First filled", "Full on", "Filled by"),
        CAUTION,
        over="WASTE",
        stop=_stop(study, behind(study, one), vented, not known, never),
    )


def _waste_elements(study: LabStudy, one: Container) -> LabelView:
    codes = declared_codes(study, one)
    if not codes:
        return LabelView(unknown="No statement is declared for what goes in. That does not say it is safe.")
    edition = Edition(study.lab.lab.ghs)
    return label_view(codes, not_classified=False, edition=edition, declared="", vented=one.cap == "vented")


def _declared(study: LabStudy, id: str) -> bool:
    noun = study.lab.mixtures.get(id) or study.lab.substances.get(id)  # type: ignore[call-overload]
    return bool(noun and (noun.hazards or noun.not_classified))


def _waste_lines(lab: Lab, one: Container) -> Iterator[str]:
    cap = f"Cap {one.cap}. " if one.cap else ""
    full = f"Full at {show_quantity(one.full_at)}. " if one.full_at else ""
    pickup = f"Fetched by the {low(role_title(lab, one.pickup))}." if one.pickup else ""
    yield f"{cap}{full}{pickup}".strip() or "Cap, level and who fetches it are not said."
    yield f"{_room(lab)}. Statements are those of the baths behind it, undiluted."
    if lab.lab.help.emergency:
        yield f"Emergency: {lab.lab.help.emergency}."
