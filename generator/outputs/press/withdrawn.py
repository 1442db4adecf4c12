"""The notice that a withdrawn card bears instead of its steps."""

from generator.outputs.press.blocks import Block, stacked, text_block
from generator.outputs.press.drawing import Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.wrapping import width
from generator.views.card import CardView


def notice(card: CardView, room: float, letters: Letters) -> Block:
    """What a withdrawn card says instead of its steps."""
    words = card.words
    largest = letters.signal * min(4.0, room / width(words.do_not_use, letters.signal, heavy=True))
    rows = [
        text_block((Run(words.do_not_use, bold=True),), room, largest, role="heading"),
        text_block((Run(words.withdrawn, bold=True),), room, letters.signal, gap=letters.space),
    ]
    if card.withdrawn:
        rows.append(text_block((Run(card.withdrawn),), room, letters.text, gap=letters.space))
    rows += [
        text_block((Run(line.label, bold=True), Run(line.text)), room, letters.text, gap=letters.gap)
        for line in card.help
    ]
    return stacked(rows)
