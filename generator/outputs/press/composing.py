"""Draws a card by the plan that was chosen: head, columns of panels and steps, foot."""

from collections.abc import Sequence
from math import atan2, degrees

from generator.outputs.press.blocks import Block, marks_of
from generator.outputs.press.columns import Flow, goes_in, level
from generator.outputs.press.drawing import Across, Box, Mark, Sheet
from generator.outputs.press.panels import panels
from generator.outputs.press.paper import Paper
from generator.outputs.press.plans import Plan
from generator.outputs.press.wrapping import width
from generator.views.card import CardView

# White that is left over opens the gaps, up to this many times; the rest stays at the bottom.
_OPEN = 2.2
_SEAM = 0.1


def draw(card: CardView, made: Plan) -> Sheet:
    """The finished drawing of a plan that fits; ValueError for one that does not."""
    placed = _opened(made)
    if placed is None:
        raise ValueError("the card does not fit this plan")
    around = made.around
    margin = around.paper.margin
    marks: list[Mark] = [across(around.paper, card.words.draft)] if card.status == "draft" else []
    marks += marks_of(around.head, margin, margin)
    top = panels(card, around.rail, around.letters, rail=True) if around.rail else around.top
    marks += _body(placed, made, top)
    marks += marks_of(around.foot, margin, around.paper.height - margin - around.foot.height)
    title = " · ".join(part for part in (card.title, card.procedure_title) if part)
    return Sheet(title, card.language, around.paper.width, around.paper.height, tuple(marks))


def _opened(made: Plan) -> Flow | None:
    """The columns level with each other, with the white between blocks grown to fill the sheet."""
    low, high = 1.0, _OPEN
    for _ in range(5):
        middle = (low + high) / 2
        fits = goes_in(made.blocks, made.height, made.count, middle)
        low, high = (middle, high) if fits else (low, middle)
    return level(made.blocks, made.height, made.count, low)


def _body(placed: Flow, made: Plan, panels: Sequence[Block]) -> list[Mark]:
    margin, letters = made.paper.margin, made.letters
    marks: list[Mark] = []
    y = start = margin + made.around.head.height
    for block in panels:
        y += block.gap
        marks += marks_of(block, margin, y)
        y += block.height
    top = (start if made.around.rail else y) + letters.space
    left, step = margin + made.left, made.column + letters.gutter
    for place in placed.placed:
        block = place.block
        x = left + place.column * step
        if block.tie:
            # The pieces of the line reach a little into one another, or a screen shows seams.
            up = place.gap + _SEAM
            marks.append(Box(x, top + place.y - up, block.tie, block.height + up, fill="black"))
        marks += marks_of(block, x, top + place.y)
    return marks


def across(sheet: Paper, word: str) -> Across:
    """A pale word from corner to corner."""
    diagonal = (sheet.width**2 + sheet.height**2) ** 0.5
    cap = min(0.16 * diagonal, 0.72 * diagonal / width(word, 1.0, heavy=True))
    angle = -degrees(atan2(sheet.height, sheet.width))
    return Across(0.0, 0.0, sheet.width, sheet.height, cap, angle, word)
