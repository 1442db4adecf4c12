"""Both ends of a card: title and identity at the top; code and caution at the bottom."""

from dataclasses import replace
from functools import lru_cache
from itertools import groupby

import segno

from generator.outputs.press.blocks import Block, Part, paragraph, stacked, text_block
from generator.outputs.press.drawing import Box, Code, Run
from generator.outputs.press.letters import Letters
from generator.views.card import CardView

# The least side that a telephone reads at arm's length, in mm (common practice, no source).
_LEAST_CODE = 23.0


def head(card: CardView, room: float, letters: Letters) -> Block:
    """Title and station discs, what procedure this is from, then number, issue, check code, good until."""
    discs, taken = _discs(card.stations, room, letters)
    title = text_block((Run(card.title, bold=True),), room - taken, letters.signal, role="title")
    rows = [replace(title, parts=(*title.parts, *discs))]
    if card.procedure_title or card.lab_title:
        rows.append(_about(card, room - taken, letters))
    rows.append(_identity(card, room if len(rows) > 1 else room - taken, letters))
    text = stacked(rows)
    down = max(text.height + 0.3 * letters.gap, _disc(letters) + 0.5 * letters.gap if discs else 0.0)
    rule = Box(0.0, 0.0, room, letters.bar, fill="black")
    return Block(down + rule.height, ((0.0, 0.0, text), (0.0, down, rule)), split=text.split)


def _about(card: CardView, room: float, letters: Letters) -> Block:
    parts = [part for part in (card.procedure_title, card.lab_title) if part]
    return text_block((Run(" · ".join(parts)),), room, letters.text, gap=0.8 * letters.gap)


def _disc(letters: Letters) -> float:
    return 1.9 * letters.signal


def _discs(stations: tuple[str, ...], room: float, letters: Letters) -> tuple[tuple[Part, ...], float]:
    size = _disc(letters)
    parts: list[Part] = []
    taken = len(stations) * (size + letters.gap)
    for place, number in enumerate(stations):
        x = room - taken + letters.gap + place * (size + letters.gap)
        cap = letters.signal * (1.0 if len(number) < 3 else 0.6)
        text = paragraph((Run(number, bold=True),), size, cap, align="center", ink="white")
        parts.append((x, 0.0, Box(0.0, 0.0, size, size, fill="black", radius=size / 2)))
        parts.append((x, (size - cap) / 2, text))
    return tuple(parts), taken


def _identity(card: CardView, room: float, letters: Letters) -> Block:
    words = card.words
    parts = (
        (words.card, card.card), (words.issue, card.issue),
        (words.check_code, card.check_code), (words.good_until, card.good_until),
    )  # fmt: skip
    pairs = [f"{label} {_solid(value)}" for label, value in parts if value]
    note = [Run(words.draft_note, bold=True)] if card.status == "draft" else []
    return text_block([*note, Run(" · ".join(pairs))], room, letters.text, gap=0.8 * letters.gap)


def _solid(value: str) -> str:
    return value.replace(" ", "\u00a0")


def foot(card: CardView, room: float, letters: Letters) -> Block:
    """The QR code to the page that says whether the card is current, and what stands above the card."""
    rule = Box(0.0, 0.0, room, letters.bar, fill="black")
    top = letters.bar + letters.gap
    left = 0.0
    parts: list[Part] = [(0.0, 0.0, rule)]
    height = 0.0
    if card.address:
        code = code_of(card.address, max(_LEAST_CODE, 4.6 * letters.text), card.words.qr_code)
        parts.append((0.0, top, code))
        left, height = code.size + letters.gap, code.size
    scan = (card.words.scan, card.address_shown) if card.address else ()
    runs = (Run(card.caution, bold=True), *(Run(text) for text in scan if text))
    text = text_block(runs, room - left, letters.text)
    parts.append((left, top + 0.4 * letters.gap, text))
    return Block(top + max(height, text.height + 0.4 * letters.gap), tuple(parts), split=text.split)


@lru_cache(maxsize=2_000)
def code_of(address: str, size: float, alt: str) -> Code:
    """The QR code of an address, error correction Q (25 %), with the quiet zone of ISO/IEC 18004."""
    matrix = [list(row) for row in segno.make_qr(address, error="q", boost_error=False).matrix]
    quiet = 4
    path: list[str] = []
    for y, row in enumerate(matrix):
        x = 0
        for dark, run in groupby(row):
            length = len(list(run))
            if dark:
                path.append(f"M{x + quiet} {y + quiet}h{length}v1h-{length}z")
            x += length
    return Code(0.0, 0.0, size, len(matrix) + 2 * quiet, "".join(path), alt)
