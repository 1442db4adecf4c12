"""Both ends of a card: title and identity at the top; code and caution at the bottom."""

from dataclasses import replace
from functools import cache, lru_cache
from re import findall
from typing import Any

import zxingcpp

from generator.outputs.press.blocks import Block, Part, abreast, paragraph, stacked, text_block
from generator.outputs.press.drawing import Box, Code, Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.wrapping import width
from generator.views.card import CardView

# The least side that a telephone reads at arm's length, in mm (common practice, no source).
_LEAST_CODE = 23.0
# Least room beside a title in cap heights, for about twenty letters in a line.
_BESIDE = 15.0


def head(card: CardView, room: float, letters: Letters) -> Block:
    """Title, station discs, number, issue, check code, good until, and what procedure this is from."""
    discs, taken = _discs(card.stations, room, letters)
    text = _lowest(card, room, taken, letters)
    down = max(text.height + 0.3 * letters.gap, _disc(letters) + 0.5 * letters.gap if discs else 0.0)
    rule = Box(0.0, 0.0, room, letters.bar, fill="black")
    titled = text._replace(parts=(*text.parts, *discs))
    return Block(down + rule.height, ((0.0, 0.0, titled), (0.0, down, rule)), split=text.split)


def _lowest(card: CardView, room: float, taken: float, letters: Letters) -> Block:
    """The lowest of the ways to set title and identity.

    A draft keeps the room that its issue and check code will take, so that what fits can be posted.
    """
    ways = [way(card, room, taken, letters) for way in _WAYS]
    if card.status == "draft":
        issued = replace(card, status="posted", issue="99", check_code="0000-0000", good_until="2000-00-00")
        later = [way(issued, room, taken, letters) for way in _WAYS]
        ways = [_no_lower(now, then) for now, then in zip(ways, later, strict=True)]
    return min(ways, key=lambda way: (way.split, round(way.height, 3)))


def _no_lower(block: Block, other: Block) -> Block:
    return block._replace(height=max(block.height, other.height), split=block.split or other.split)


def _title(card: CardView, room: float, letters: Letters) -> Block:
    return text_block((Run(card.title, bold=True),), room, letters.signal, role="title")


def _apart(card: CardView, room: float, taken: float, letters: Letters) -> Block:
    """A line each for the procedure and for the card."""
    about, identity, gap = _about(card), _identity(card), 0.8 * letters.gap
    rows = [_title(card, room - taken, letters)]
    if about:
        rows.append(text_block((Run(about),), room - taken, letters.text, gap=gap))
    rows.append(text_block(identity, room if about else room - taken, letters.text, gap=gap))
    return stacked(rows)


def _under(card: CardView, room: float, taken: float, letters: Letters) -> Block:
    """The card's identity beside its discs, the procedure under both, each from a new line."""
    gap, about = 0.8 * letters.gap, _about(card)
    rows = [_title(card, room - taken, letters)]
    rows.append(text_block(_identity(card), room - taken, letters.text, gap=gap))
    if about:
        rows.append(text_block((Run(about),), room, letters.text, gap=0.35 * letters.gap))
    return stacked(rows)


def _run_on(card: CardView, room: float, taken: float, letters: Letters) -> Block:
    """One paragraph for both."""
    about = _about(card)
    runs = [*_identity(card), *([Run(f"· {about}")] if about else [])]
    gap = 0.8 * letters.gap
    return stacked(
        [_title(card, room - taken, letters), text_block(runs, (room - taken, room), letters.text, gap=gap)]
    )


def _beside(card: CardView, room: float, taken: float, letters: Letters) -> Block:
    """The card's identity in two lines beside a short title, the procedure under both."""
    left = width(card.title, letters.signal, heavy=True) + 2 * letters.space
    beside = room - taken - left
    if beside < _BESIDE * letters.text:
        return _apart(card, room, taken, letters)
    identity = text_block(_identity(card), beside, letters.text)
    rows = [abreast((_title(card, room - taken, letters), identity), (0.0, left))]
    if about := _about(card):
        rows.append(text_block((Run(about),), (room - taken, room), letters.text, gap=0.8 * letters.gap))
    return stacked(rows)


_WAYS = (_apart, _under, _run_on, _beside)


def _about(card: CardView) -> str:
    """Whose card it is; what stands behind the last comma, the room, is kept in one line."""
    college, comma, room = card.lab_title.rpartition(", ")
    lab_title = f"{college}{comma}{_solid(room)}"
    return "\u00a0· ".join(part for part in (card.procedure_title, lab_title) if part)


def _disc(letters: Letters) -> float:
    return 1.9 * letters.signal


def _discs(stations: tuple[str, ...], room: float, letters: Letters) -> tuple[tuple[Part, ...], float]:
    size = _disc(letters)
    parts: list[Part] = []
    taken = len(stations) * (size + letters.gap)
    for place, number in enumerate(stations):
        x = room - taken + letters.gap + place * (size + letters.gap)
        cap = letters.signal * {1: 1.0, 2: 0.8}.get(len(number), 0.6)
        text = paragraph((Run(number, bold=True),), size, cap, align="center", ink="white")
        parts.append((x, 0.0, Box(0.0, 0.0, size, size, fill="black", radius=size / 2)))
        parts.append((x, (size - cap) / 2, text))
    return tuple(parts), taken


def _identity(card: CardView) -> list[Run]:
    words = card.words
    parts = (
        (words.card, card.card), (words.issue, card.issue),
        (words.check_code, card.check_code), (words.good_until, card.good_until),
    )  # fmt: skip
    pairs = [_solid(f"{label} {value}") for label, value in parts if value]
    note = [Run(words.draft_note, bold=True)] if card.status == "draft" else []
    return [*note, Run("\u00a0· ".join(pairs))]


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
    modules, path = _modules(address)
    return Code(0.0, 0.0, size, modules, path, alt)


@lru_cache(maxsize=2_000)
def _modules(address: str) -> tuple[int, str]:
    """Modules along a side and the dark ones as a path; a card asks for its code in many sizes."""
    made = zxingcpp.create_barcode(address, zxingcpp.BarcodeFormat.QRCode, ec_level="Q")
    # A byte a module, 0 is dark; that an image is a buffer stands in no type of theirs.
    image: Any = made.to_image(scale=1, add_quiet_zones=False)
    side, pixels, quiet = int(image.shape[0]), bytes(image), 4
    rows = (findall(rb"\0+|\xff+", pixels[y * side : (y + 1) * side]) for y in range(side))
    strokes = _strokes(side)
    path = (f"M{quiet} {quiet + y}.5{''.join(strokes[run] for run in row)}" for y, row in enumerate(rows))
    return side + 2 * quiet, "".join(path)


@cache
def _strokes(side: int) -> dict[bytes, str]:
    """A run of dark modules as a stroke, one of light ones as a step without ink."""
    lengths = range(1, side + 1)
    return {b"\0" * n: f"h{n}" for n in lengths} | {b"\xff" * n: f"m{n} 0" for n in lengths}
