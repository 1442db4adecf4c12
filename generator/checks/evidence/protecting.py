"""Which pieces protect which part of the body, and what is missing."""

from collections.abc import Iterable

from generator.hazards import Protection, asks_protection, hazard_word
from generator.model import Lab, Text
from generator.study.covering import CHEMICALS, covers, piece

__all__ = [
    "CHEMICALS",
    "asked",
    "bare",
    "covers",
    "known",
    "listed",
    "piece",
    "pieces_for",
    "protected_parts",
    "wear_fix",
]


def bare(lab: Lab, worn: Iterable[str], parts: Iterable[str], against: str) -> tuple[str, ...]:
    """The parts that nothing worn protects."""
    pieces = tuple(worn)
    return tuple(part for part in parts if not any(covers(lab, id, part, against) for id in pieces))


def pieces_for(lab: Lab, parts: Iterable[str], against: str, wanted: Iterable[str] = ()) -> tuple[str, ...]:
    """Ids of pieces that protect these parts, the wanted ones first; what none protects is left out."""
    order = (*wanted, *map(str, lab.ppe))
    chosen: dict[str, None] = {}
    for part in parts:
        found = next((id for id in order if covers(lab, id, part, against)), None)
        if found and not any(covers(lab, id, part, against) for id in chosen):
            chosen[found] = None
    return tuple(chosen)


def asked(codes: tuple[str, ...]) -> tuple[Protection, ...]:
    """What statements ask to be protected; lungs that extraction answers are another rule's."""
    return tuple(found for found in asks_protection(codes) if not found.unless_extraction)


def protected_parts(lab: Lab, word: str) -> tuple[str, ...]:
    """The parts of the body that a hazard word asks to cover: the lab's own row, else the one that ships."""
    own = lab.hazard_words.get(Text(word))
    if own is not None:
        return tuple(own.protect)
    shipped = hazard_word(word)
    return shipped.protect if shipped else ()


def known(lab: Lab, ids: Iterable[str]) -> bool:
    """Whether all pieces are declared; one that is not is another rule's."""
    return all(piece(lab, id) is not None for id in ids)


def wear_fix(lab: Lab, parts: tuple[str, ...], against: str, where: str) -> str:
    """What to write so that these parts are protected."""
    pieces = pieces_for(lab, parts, against)
    left = bare(lab, pieces, parts, against)
    add = f"add {' and '.join(f'`{id}`' for id in pieces)} to {where}" if pieces else ""
    declare = (
        f"declare under `ppe` a piece that protects {listed(left)} `against: [{against}]`" if left else ""
    )
    return "; ".join(words for words in (add, declare) if words)


def listed(words: Iterable[str]) -> str:
    """Words as a list in a sentence."""
    names = list(words)
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}" if names else "nothing"
