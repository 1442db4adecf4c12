"""What is worn at each place that holds something or has a hazard of its own, part of the body by part."""

from generator.hazards import asks_protection, hazard_word
from generator.model import Lab, Place, Text
from generator.study import LabStudy
from generator.study.covering import CHEMICALS, covers
from generator.views.addresses import place_address
from generator.views.filling.words import joined, low, thing_title
from generator.views.lab_hazards import CellView, TableView
from generator.views.shown import LinkView

PARTS = ("eyes", "face", "hands", "body", "lungs", "feet", "hearing", "head")


def wear_table(study: LabStudy) -> TableView:
    """Rows of places; a column for each part of the body that anything here covers or asks for."""
    lab = study.lab
    places = [(str(id), one) for id, one in lab.places.items() if one.holds or one.wear or one.hazards]
    found = [(id, one, {part: _cell(study, one, part) for part in PARTS}) for id, one in places]
    parts = tuple(part for part in PARTS if any(cells[part].text != "–" for _, _, cells in found))
    rows = tuple(
        (
            CellView(_title(one), LinkView(_title(one), place_address(id)), _holds(lab, one)),
            *(cells[p] for p in parts),
        )
        for id, one, cells in found
    )
    foot = (
        "The words under a piece are what asks for it. “Nothing” means that a statement or hazard asks for a "
        "part to be covered and nothing declared here covers it.",
        "Which glove material: see the supplier’s sheets.",
    )
    heads = ("Place", *(part.capitalize() for part in parts))
    return TableView("worn_where", "Worn where", heads, rows, foot=foot)


def _title(place: Place) -> str:
    return place.title if place.number is None else f"{place.number} {place.title}"


def _holds(lab: Lab, place: Place) -> str:
    return low(thing_title(lab, str(place.holds))) if place.holds else ""


def _cell(study: LabStudy, place: Place, part: str) -> CellView:
    lab = study.lab
    worn = tuple(dict.fromkeys(map(str, (*lab.lab.base_wear, *place.wear, *_mixture_wear(lab, place)))))
    asked, by_words = _asked(study, place, part), _words(lab, place, part)
    pieces = [id for id in worn if _protects(lab, id, part, bool(asked), by_words)]
    because = ", ".join((*asked, *(low(word) for word in by_words.values())))
    if pieces:
        return CellView(joined(thing_title(lab, id) for id in pieces), note=because)
    if not because:
        return CellView("–")
    if part == "lungs" and place.extraction:
        return CellView(f"Extraction: {place.extraction}", note=because)
    return CellView("Nothing", note=because, mark="missing")


def _mixture_wear(lab: Lab, place: Place) -> tuple[Text, ...]:
    made = lab.mixtures.get(place.holds) if place.holds else None
    return made.wear if made else ()


def _asked(study: LabStudy, place: Place, part: str) -> tuple[str, ...]:
    codes = study.statements_of(str(place.holds)) if place.holds else ()
    return next((one.because for one in asks_protection(codes) if one.part == part), ())


def _words(lab: Lab, place: Place, part: str) -> dict[str, str]:
    """Hazard words of the place that ask for this part, with their titles."""
    found: dict[str, str] = {}
    for word in place.hazards:
        own, shipped = lab.hazard_words.get(word), hazard_word(str(word))
        known = own or shipped
        if known and part in known.protect:
            found[str(word)] = str(known.title)
    return found


def _protects(lab: Lab, id: str, part: str, chemicals: bool, words: dict[str, str]) -> bool:
    if chemicals or words:
        against = (*((CHEMICALS,) if chemicals else ()), *words)
        return any(covers(lab, id, part, one) for one in against)
    piece = lab.ppe.get(Text(id))
    return bool(piece and piece.protects == part)
