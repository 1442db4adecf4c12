"""What is worn with a substance or mixture, part of the body by part, with the statement that asks for it."""

from collections.abc import Iterable, Iterator

from generator.hazards import Protection, asks_protection
from generator.model import Lab, Mixture, Place, Substance
from generator.study import LabStudy, Study
from generator.study.covering import CHEMICALS, pieces_over
from generator.views.chemical import HazardLineView
from generator.views.filling.words import joined, low, thing_title


def see_sheet(noun: Mixture | Substance) -> str:
    """Where to look for what the lab does not hold; what is mixed here has no supplier and no sheet."""
    if isinstance(noun, Mixture):
        return "see the suppliers’ sheets of its parts"
    return "see the supplier’s sheet"


def places_of(lab: Lab, id: str) -> tuple[Place, ...]:
    """The places that hold a mixture."""
    return tuple(place for place in lab.places.values() if place.holds == id)


def worn_with(study: LabStudy, id: str) -> tuple[str, ...]:
    """Pieces that all wear, and those that the mixture, its places, or the steps that use it ask for."""
    lab = study.lab
    noun = lab.mixtures.get(id) or lab.substances.get(id)  # type: ignore[call-overload]
    own = noun.wear if isinstance(noun, Mixture) else ()
    asked = (piece for place in places_of(lab, id) for piece in place.wear)
    return tuple(dict.fromkeys(map(str, (*lab.lab.base_wear, *own, *asked, *_at_its_steps(study, id)))))


def _at_its_steps(study: LabStudy, id: str) -> tuple[str, ...]:
    """What is on at every step that uses it, by the walk; nothing where no procedure is looked at."""
    if not isinstance(study, Study):
        return ()
    found = [tuple(m.before.names("worn")) for m in study.walk.straight if id in m.step.use]
    return tuple(piece for piece in found[0] if all(piece in worn for worn in found)) if found else ()


def wear_lines(study: LabStudy, id: str, noun: Mixture | Substance) -> Iterator[HazardLineView]:
    """A line for each part of the body that the statements ask to cover, then the whole, then extraction."""
    lab, codes = study.lab, tuple(map(str, noun.hazards))
    worn = worn_with(study, id)
    asked = asks_protection(codes)
    places = places_of(lab, id)
    for one in asked:
        yield HazardLineView(covered_words(lab, worn, one, places), one.part.capitalize())
    if worn:
        yield HazardLineView(joined(thing_title(lab, piece) for piece in worn), "In all")
    for place in places:
        if place.extraction:
            yield HazardLineView(place.extraction, f"Extraction at {low(place.title)}")
    if isinstance(noun, Substance) and noun.needs_extraction:
        yield HazardLineView("needed wherever it is open", "Extraction")
    if any(one.part == "hands" for one in asked):
        yield HazardLineView(f"Which glove material: {see_sheet(noun)}. This page does not know it.")


def covered_words(lab: Lab, worn: Iterable[str], asked: Protection, places: Iterable[Place]) -> str:
    """ "Nitrile gloves (asked for by H314)", or that nothing declared here covers it."""
    over = pieces_over(lab, worn, asked.part, CHEMICALS)
    because = f"(asked for by {', '.join(asked.because)})"
    if over:
        return f"{joined(thing_title(lab, piece) for piece in over)} {because}"
    if asked.unless_extraction and any(place.extraction for place in places):
        return f"extraction at the place {because}"
    return f"nothing that is declared here covers this {because}. Ask before use."
