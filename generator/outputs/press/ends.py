"""Both ends of a card: title and identity at the top; code and caution at the bottom."""

from functools import cache, lru_cache, partial
from re import findall
from typing import Any, NamedTuple

import zxingcpp

from generator.outputs.press.blocks import Block, Late, Part, abreast, paragraph, stacked, text_block
from generator.outputs.press.drawing import Box, Code, Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.wrapping import width
from generator.views.card import CardView

# The least side that a telephone reads at arm's length, in mm (common practice, no source).
_LEAST_CODE = 23.0
# Least room beside a title in cap heights, for about twenty letters in a line.
_BESIDE = 15.0


class _Said(NamedTuple):
    """What a head says: title, where the card belongs, which card it is."""

    title: str
    about: str
    identity: tuple[Run, ...]


def head(card: CardView, room: float, letters: Letters) -> Block:
    """Title, station discs, number, issue, check code, good until, and what procedure this is from."""
    size = _disc(letters)
    taken = len(card.stations) * (size + letters.gap)
    text = _lowest(card, room, taken, letters)
    down = max(text.height + 0.3 * letters.gap, size + 0.5 * letters.gap if taken else 0.0)
    rule = Box(0.0, 0.0, room, letters.bar, fill="black")
    discs = Late(partial(_discs, card.stations, room, letters))
    parts: tuple[Part, ...] = ((0.0, 0.0, text), (0.0, 0.0, discs), (0.0, down, rule))
    return Block(down + rule.height, parts, split=text.split)


def _lowest(card: CardView, room: float, taken: float, letters: Letters) -> Block:
    """The lowest of the ways to set title and identity.

    A draft keeps the room that its issue and check code will take, so that what fits can be posted.
    """
    title = text_block((Run(card.title, bold=True),), room - taken, letters.signal, role="title")
    said = _Said(card.title, _about(card), _identity(card, card.issue, card.check_code, card.good_until))
    ways = _ways(said, title, room, taken, letters)
    if card.status == "draft":
        issued = said._replace(identity=_identity(card, "99", "0000-0000", "2000-00-00")[1:])
        later = _ways(issued, title, room, taken, letters)
        ways = [_no_lower(now, then) for now, then in zip(ways, later, strict=True)]
    return min(ways, key=lambda way: (way.split, round(way.height, 3)))


def _ways(said: _Said, title: Block, room: float, taken: float, letters: Letters) -> list[Block]:
    return [way(said, title, room, taken, letters) for way in (_apart, _under, _run_on, _beside)]


def _no_lower(block: Block, other: Block) -> Block:
    return block._replace(height=max(block.height, other.height), split=block.split or other.split)


def _apart(said: _Said, title: Block, room: float, taken: float, letters: Letters) -> Block:
    """A line each for the procedure and for the card."""
    gap = 0.8 * letters.gap
    rows = [title]
    if said.about:
        rows.append(text_block((Run(said.about),), room - taken, letters.text, gap=gap))
    rows.append(text_block(said.identity, room if said.about else room - taken, letters.text, gap=gap))
    return stacked(rows)


def _under(said: _Said, title: Block, room: float, taken: float, letters: Letters) -> Block:
    """The card's identity beside its discs, the procedure under both, each from a new line."""
    rows = [title, text_block(said.identity, room - taken, letters.text, gap=0.8 * letters.gap)]
    if said.about:
        rows.append(text_block((Run(said.about),), room, letters.text, gap=0.35 * letters.gap))
    return stacked(rows)


def _run_on(said: _Said, title: Block, room: float, taken: float, letters: Letters) -> Block:
    """One paragraph for both."""
    runs = (*said.identity, *((Run(f"· {said.about}"),) if said.about else ()))
    return stacked([title, text_block(runs, (room - taken, room), letters.text, gap=0.8 * letters.gap)])


def _beside(said: _Said, title: Block, room: float, taken: float, letters: Letters) -> Block:
    """The card's identity in two lines beside a short title, the procedure under both."""
    left = width(said.title, letters.signal, heavy=True) + 2 * letters.space
    beside = room - taken - left
    if beside < _BESIDE * letters.text:
        return _apart(said, title, room, taken, letters)
    rows = [abreast((title, text_block(said.identity, beside, letters.text)), (0.0, left))]
    if said.about:
        gap = 0.8 * letters.gap
        rows.append(text_block((Run(said.about),), (room - taken, room), letters.text, gap=gap))
    return stacked(rows)


def _about(card: CardView) -> str:
    """Whose card it is; what stands behind the last comma, the room, is kept in one line."""
    college, comma, room = card.lab_title.rpartition(", ")
    lab_title = f"{college}{comma}{_solid(room)}"
    return "\u00a0· ".join(part for part in (card.procedure_title, lab_title) if part)


def _disc(letters: Letters) -> float:
    return 1.9 * letters.signal


def _discs(stations: tuple[str, ...], room: float, letters: Letters) -> Block:
    size = _disc(letters)
    parts: list[Part] = []
    for place, number in enumerate(stations):
        x = room - (len(stations) - place) * (size + letters.gap) + letters.gap
        cap = letters.signal * {1: 1.0, 2: 0.8}.get(len(number), 0.6)
        text = paragraph((Run(number, bold=True),), size, cap, align="center", ink="white")
        parts.append((x, 0.0, Box(0.0, 0.0, size, size, fill="black", radius=size / 2)))
        parts.append((x, (size - cap) / 2, text))
    return Block(size, tuple(parts))


def _identity(card: CardView, issue: str, code: str, until: str) -> tuple[Run, ...]:
    words = card.words
    parts = (
        (words.card, card.card), (words.issue, issue), (words.check_code, code), (words.good_until, until),
    )  # fmt: skip
    pairs = [_solid(f"{label} {value}") for label, value in parts if value]
    note = (Run(words.draft_note, bold=True),) if card.status == "draft" else ()
    return *note, Run("\u00a0· ".join(pairs))


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
