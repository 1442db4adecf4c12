"""Names as people say them, and the nearest known name for a wrong one."""

from collections.abc import Iterable
from difflib import get_close_matches

from generator.model import Lab


def title_of(lab: Lab, id: str) -> str:
    """The title of whatever noun has this id; for a place with its station number; else the id itself."""
    place = lab.places.get(id)  # type: ignore[call-overload]
    if place:
        number = f" (station {place.number})" if place.number is not None else ""
        return f"{place.title.lower() if place.title[1:].islower() else place.title}{number}"
    nouns = (
        lab.roles,
        lab.ppe,
        lab.residues,
        lab.racks,
        lab.timers,
        lab.waste,
        lab.mixtures,
        lab.substances,
        lab.signoffs,
        lab.hazard_words,
    )
    for noun in nouns:
        if id in noun:
            title: str = noun[id].title  # type: ignore[index]
            return title[0].lower() + title[1:] if title[1:2].islower() else title
    return id


def nearest(word: str, known: Iterable[str]) -> str:
    """A fix that names the nearest known name, or lists the known ones where none is near."""
    names = sorted(set(known))
    close = get_close_matches(word, names, 1, 0.6)
    if close:
        return f"did you mean `{close[0]}`?"
    return f"declare it, or use one of: {', '.join(names[:12])}" if names else "declare it first"
