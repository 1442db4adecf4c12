"""Every text that a card prints, so that a letter that cannot be printed is found before anything is set."""

import unicodedata
from collections.abc import Callable, Iterable
from dataclasses import fields
from functools import cache, lru_cache
from operator import attrgetter

from generator.outputs.press.metrics import bold, medium, missing, printable
from generator.problems import NewelError
from generator.views.card import CardStep, CardView
from generator.views.card_words import CardWords

_NOT_PRINTED = ("id", "stage", "stage_title", "marks")


def printed(card: CardView) -> list[str]:
    """The card's own texts and the fixed words, in no special order."""
    return [*own_texts(card), *_of_words(card.words)]


def own_texts(card: CardView) -> list[str]:
    """The card's own texts, in no special order."""
    texts = [
        card.title, card.card, card.procedure_title, card.lab_title, card.issue, card.check_code,
        card.good_until, card.address_shown, card.stop_rule, card.signal, card.caution, card.withdrawn,
        *card.stations,
    ]  # fmt: skip
    for piece in card.wear:
        texts += (piece.symbol, piece.title)
    for line in card.help:
        texts += (line.label, line.text)
    texts += (hazard.text for hazard in card.hazards)
    for step in card.steps:
        texts += texts_of_step(step)
    for table in card.tables:
        texts += (table.title, table.note, *table.heads)
        for row in table.rows:
            texts += row
    return texts


def texts_of_step(step: CardStep) -> tuple[str, ...]:
    """Every text that a row prints."""
    return *_step_texts()(step), *(mark.text for mark in step.marks)


@cache
def _step_texts() -> Callable[[CardStep], tuple[str, ...]]:
    return attrgetter(*(field.name for field in fields(CardStep) if field.name not in _NOT_PRINTED))


@lru_cache(maxsize=100)
def _of_words(words: CardWords) -> tuple[str, ...]:
    values = (getattr(words, field.name) for field in fields(words))
    return tuple(value for value in values if isinstance(value, str))


@cache
def _letters() -> frozenset[str]:
    return printable(medium().advances.keys() & bold().advances.keys())


def unprintable(card: CardView) -> tuple[str, ...]:
    """Characters of the card that the bundled letters do not have, each once."""
    return unprintable_in(printed(card))


def unprintable_in(texts: Iterable[str]) -> tuple[str, ...]:
    """Characters of any texts that the bundled letters do not have, each once."""
    return missing(texts, _letters())


def demand_letters(card: CardView) -> None:
    """Raise NewelError, naming the characters, when the card cannot be printed as written."""
    demand(card.title, unprintable(card))


def demand(title: str, strange: tuple[str, ...]) -> None:
    """Raise NewelError for a sheet of that title which has characters without a letter."""
    if strange:
        raise NewelError(
            "letter-missing",
            f"the card {title!r} has {', '.join(map(_named, strange))}, which its letters cannot print",
            "a card prints every character as written or not at all",
            "write it in words, or leave it out",
        )


def _named(character: str) -> str:
    name = unicodedata.name(character, "a character without a name")
    shown = f"{character} " if character.isprintable() else ""
    return f"{shown}(U+{ord(character):04X} {name})"
