"""The foot of a card: the code of the page that says whether it is current, with the caution."""

from typing import NamedTuple

from generator.outputs.press.blocks import Block, Part, words_block
from generator.outputs.press.codes import code_of
from generator.outputs.press.drawing import Box, Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.wrapping import Paragraph, words_of
from generator.views.card import CardView

# The least side that a telephone reads at arm's length, in mm (common practice, no source).
_LEAST_CODE = 23.0


class SetFoot(NamedTuple):
    """A foot before it has a room: the address in its code, what is said of the code, the caution."""

    address: str
    alt: str
    caution: Paragraph


def set_foot(card: CardView) -> SetFoot:
    """All of the foot that hangs on no width."""
    scan = (card.words.scan, card.address_shown) if card.address else ()
    runs = (Run(card.caution, bold=True), *(Run(text) for text in scan if text))
    return SetFoot(card.address, card.words.qr_code, words_of(runs))


def foot(made: SetFoot, room: float, letters: Letters) -> Block:
    """The code with the caution beside it, under a rule."""
    rule = Box(0.0, 0.0, room, letters.bar, fill="black")
    top = letters.bar + letters.gap
    left = height = 0.0
    parts: list[Part] = [(0.0, 0.0, rule)]
    if made.address:
        code = code_of(made.address, max(_LEAST_CODE, 4.6 * letters.text), made.alt)
        parts.append((0.0, top, code))
        left, height = code.size + letters.gap, code.size
    text = words_block(made.caution, room - left, letters.text)
    parts.append((left, top + 0.4 * letters.gap, text))
    return Block(top + max(height, text.height + 0.4 * letters.gap), tuple(parts), split=text.split)
