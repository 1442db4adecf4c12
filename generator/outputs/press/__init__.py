"""The press: a finished card becomes a wall card in PDF and SVG, or is refused with a way to split it."""

from generator.outputs.press.card import CardFit, card_pdf, card_svg, fit, sheet_of
from generator.outputs.press.paper import SIZES, least_letter
from generator.outputs.press.splitting import CardPart, part_of

__all__ = [
    "SIZES",
    "CardFit",
    "CardPart",
    "card_pdf",
    "card_svg",
    "fit",
    "least_letter",
    "part_of",
    "sheet_of",
]
