"""The panels above the steps: what to wear, when to stop and whom to call, what can harm.

Each has its word in the label column at the left, so that the eye finds it by its place.
"""

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from generator.outputs.press.blocks import Block, abreast, stacked, text_block
from generator.outputs.press.drawing import Run, Sign
from generator.outputs.press.frames import framed, inked, inner_room
from generator.outputs.press.letters import Letters
from generator.outputs.press.packing import Item, packed
from generator.outputs.press.wrapping import width
from generator.outputs.signs import sign_name
from generator.views.card import CardHazard, CardHelp, CardView, CardWear
from generator.views.card_words import CardWords


class Panels(NamedTuple):
    """What the panels of a card say; cards of a lab often say the same."""

    wear: tuple[CardWear, ...]
    stop_rule: str
    help: tuple[CardHelp, ...]
    hazards: tuple[CardHazard, ...]
    signal: str
    words: CardWords


def panels(card: CardView, room: float, letters: Letters, *, rail: bool) -> tuple[Block, ...]:
    """The panels that the card has something for, in reading order; in a rail their words stand on top."""
    said = Panels(card.wear, card.stop_rule, card.help, card.hazards, card.signal, card.words)
    return _set(said, room, letters, rail)


@lru_cache(maxsize=1_000)
def _set(card: Panels, room: float, letters: Letters, rail: bool) -> tuple[Block, ...]:
    label = 0.0 if rail else _label_width(card, letters)
    built = []
    if card.wear:
        built.append(_wear(card, room, label, letters))
    if card.stop_rule or card.help:
        built.append(_stop(card, room, label, letters))
    if card.hazards:
        built.append(_hazards(card, room, label, letters))
    return tuple(block._replace(gap=letters.space) for block in built)


def _label_width(card: Panels, letters: Letters) -> float:
    """The label column holds the widest word of its labels, so that all are of one height."""
    labels = [card.words.stop]
    labels += [card.words.wear] if card.wear else []
    labels += [_signal(card)] if card.hazards else []
    words = [word for label in labels for word in label.split()]
    return max(width(word, letters.signal, heavy=True) for word in words) + 2 * letters.gap


def _signal(card: Panels) -> str:
    return card.signal or card.words.hazards


def _wear(card: Panels, room: float, label: float, letters: Letters) -> Block:
    runs = (Run(card.words.wear, bold=True),)
    items = [
        _item(piece.symbol, f"{piece.title}\u00a0{piece.symbol}".strip(), card, letters)
        for piece in card.wear
    ]
    if not label:
        word = text_block(runs, room, letters.signal, role="heading")
        return stacked((word, packed(items, room, letters)._replace(gap=letters.gap)))
    word = text_block(runs, label - letters.gap, letters.signal, role="heading")
    signs = packed(items, room - label - letters.gap, letters)
    down = (letters.sign - letters.signal) / 2
    lowered = Block(word.height + down, ((0.0, down, word),), split=word.split)
    return abreast((lowered, signs), (letters.gap, label + letters.gap))


def _item(symbol: str, text: str, card: Panels, letters: Letters) -> Item:
    drawn = sign_name(symbol or "M001")
    # What a screen reader hears is what is drawn: the general sign where the own one is not.
    sign = Sign(0.0, 0.0, letters.sign, drawn, f"{card.words.sign} {drawn}")
    return Item(sign, (Run(text),))


def _stop(card: Panels, room: float, label: float, letters: Letters) -> Block:
    inner = inner_room(room, label, letters)
    rows = [text_block((Run(card.stop_rule, bold=True),), inner, letters.text)] if card.stop_rule else []
    rows += [
        text_block((Run(line.label, bold=True), Run(line.text)), inner, letters.text, gap=0.5 * letters.gap)
        for line in card.help
    ]
    return framed(card.words.stop, "stop", inked(stacked(rows), letters), room, label, letters)


def _hazards(card: Panels, room: float, label: float, letters: Letters) -> Block:
    inner = inner_room(room, label, letters)
    items = [
        _item(symbol or "W001", " · ".join(texts), card, letters) for symbol, texts in _by_sign(card.hazards)
    ]
    return framed(_signal(card), "", packed(items, inner, letters), room, label, letters)


def _by_sign(hazards: Sequence[CardHazard]) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """Hazards under one sign together, in the order of their first one."""
    order = dict.fromkeys(hazard.symbol for hazard in hazards)
    return tuple((symbol, tuple(h.text for h in hazards if h.symbol == symbol)) for symbol in order)
