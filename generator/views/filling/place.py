"""The page of a place."""

from collections.abc import Iterator

from generator.model import Place
from generator.study import LabStudy
from generator.units import show_quantity, show_window
from generator.views.filling.hazard_words import word_sign
from generator.views.filling.words import (
    chemical_link,
    fail_sentence,
    joined,
    low,
    role_title,
    thing_title,
    worn_sign,
)
from generator.views.place import PlaceView
from generator.views.shown import BannerView, FactView, LinkView, SignView


def place_view(study: LabStudy, id: str, steps: tuple[LinkView, ...] = ()) -> PlaceView:
    """What a place demands and allows, and `steps`, one link for each procedure that works there."""
    place = study.place(id)
    assert place is not None
    lab = study.lab
    timer = lab.timers.get(place.timer) if place.timer else None
    contents = chemical_link(lab, str(place.holds)) if place.holds else None
    words = (place.title, f"station {place.number}" if place.number is not None else "", place.look or "")
    return PlaceView(
        id=id,
        number="" if place.number is None else str(place.number),
        title=place.title,
        facts=tuple(_facts(study, place)),
        wear=tuple(_wear(study, place)),
        hazards=tuple(word_sign(lab, str(word)) for word in place.hazards),
        look=place.look or "",
        not_right=fail_sentence(lab, place.not_right),
        timer=timer.title if timer else "",
        first=(timer.when_it_sounds or "") if timer else "",
        contents=contents,
        steps=steps,
        banners=tuple(_banners(place)),
        search_text="\n".join((*words, contents.text if contents else "")),
    )


def out_of_use(place: Place) -> str:
    """ "Out of use until 27 November 2026", or nothing."""
    if place.out_of_use is None:
        return ""
    until = place.out_of_use.until
    return f"Out of use until {until.day} {until:%B %Y}" if until else "Out of use"


def _banners(place: Place) -> Iterator[BannerView]:
    if place.out_of_use:
        yield BannerView("out-of-use", out_of_use(place), place.out_of_use.because)


def _wear(study: LabStudy, place: Place) -> Iterator[SignView]:
    """What all wear in this room, where a place has a hazard or asks for more, then what it asks for."""
    base = study.lab.lab.base_wear if place.wear or place.holds or place.hazards else ()
    for piece in base:
        yield worn_sign(study.lab, str(piece), "all the time")
    for piece in place.wear:
        if piece in base:
            continue
        fresh = place.fresh_gloves and _on_hands(study, str(piece))
        when = "when it is hot" if place.wear_when else ""
        yield worn_sign(study.lab, str(piece), "a fresh pair" if fresh else when)


def _on_hands(study: LabStudy, piece: str) -> bool:
    worn = study.lab.ppe.get(piece)  # type: ignore[call-overload]
    return bool(worn and worn.protects == "hands")


def _facts(study: LabStudy, place: Place) -> Iterator[FactView]:
    lab = study.lab
    if place.temperature:
        yield FactView("Temperature", show_window(place.temperature))
    if place.time:
        yield FactView("Time", show_window(place.time))
    if place.arrive != "any":
        yield FactView("The part comes in", place.arrive)
    if place.room_for is not None:
        yield FactView("Room for", str(place.room_for))
    if place.shows:
        yield FactView("Shows steps of", show_quantity(place.shows))
    yield from _fed(place)
    yield from _rides(study, place)
    if place.drains_to:
        yield FactView("Drains into", thing_title(lab, str(place.drains_to)))
    if place.keeper:
        yield FactView("Kept by", role_title(lab, place.keeper))
    if place.book:
        yield FactView("Booking", place.book)


def _fed(place: Place) -> Iterator[FactView]:
    """What the place is fed with and vented by."""
    if place.water:
        yield FactView("Water", place.water)
    if place.power:
        most = f", at most {show_quantity(place.power.most)}" if place.power.most else ""
        yield FactView("Supply", f"{place.power.supply}{most}")
    if place.extraction:
        yield FactView("Extraction", place.extraction)


def _rides(study: LabStudy, place: Place) -> Iterator[FactView]:
    """What may ride in, what is taken off, what is left on; refused unless allowed."""
    if place.holds and place.allows is not None:
        allowed = joined(low(thing_title(study.lab, str(one))) for one in place.allows)
        yield FactView("May carry in", allowed or "nothing")
    for label, residues in (("Takes off", place.clears), ("Leaves on the part", place.leaves)):
        if residues:
            yield FactView(label, joined(low(thing_title(study.lab, str(one))) for one in residues))
