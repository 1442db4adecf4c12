"""The head of a card: title, the stations where it hangs, which card it is and whose."""

from collections.abc import Iterator
from functools import partial
from typing import NamedTuple

from generator.outputs.press.blocks import Block, Late, Part, abreast, stacked, words_block, words_in
from generator.outputs.press.drawing import Box, Run
from generator.outputs.press.letters import Letters
from generator.outputs.press.wrapping import Paragraph, words_of
from generator.views.card import CardView

# Least room beside a title in cap heights, for about twenty letters in a line.
_BESIDE = 15.0


class _Said(NamedTuple):
    """What a head says under its title: whose card it is, which card it is, both in one paragraph."""

    about: Paragraph | None
    identity: Paragraph
    both: Paragraph


class SetHead(NamedTuple):
    """A head before it has a room; a draft also keeps the room of what it will say once it is issued."""

    title: Paragraph
    said: tuple[_Said, ...]
    stations: tuple[str, ...]


def set_head(card: CardView) -> SetHead:
    """All of the head that hangs on no width."""
    said = [_said(card, _identity(card, card.issue, card.check_code, card.good_until))]
    if card.status == "draft":
        said.append(_said(card, _identity(card, "99", "0000-0000", "2000-00-00")[1:]))
    return SetHead(words_of((Run(card.title, bold=True),)), tuple(said), card.stations)


def _said(card: CardView, identity: tuple[Run, ...]) -> _Said:
    about = _about(card)
    both = (*identity, Run(f"· {about}")) if about else identity
    return _Said(words_of((Run(about),)) if about else None, words_of(identity), words_of(both))


def head(made: SetHead, room: float, letters: Letters) -> Block:
    """Title, station discs, number, issue, check code, good until, and what procedure this is from."""
    size = _disc(letters)
    taken = len(made.stations) * (size + letters.gap)
    text = _lowest(made, room, taken, letters)
    down = max(text.height + 0.3 * letters.gap, size + 0.5 * letters.gap if taken else 0.0)
    rule = Box(0.0, 0.0, room, letters.bar, fill="black")
    discs = Late(partial(_discs, made.stations, room, letters))
    parts: tuple[Part, ...] = ((0.0, 0.0, text), (0.0, 0.0, discs), (0.0, down, rule))
    return Block(down + rule.height, parts, split=text.split)


def _lowest(made: SetHead, room: float, taken: float, letters: Letters) -> Block:
    """The lowest of the ways to set title and identity.

    A draft keeps the room that its issue and check code will take, so that what fits can be posted.
    """
    title = words_block(made.title, room - taken, letters.signal, role="title")
    now, *later = (list(_ways(made.title, title, said, room, taken, letters)) for said in made.said)
    for issued in later:
        now = [_no_lower(way, then) for way, then in zip(now, issued, strict=True)]
    return min(now, key=lambda way: (way.split, round(way.height, 3)))


def _no_lower(block: Block, other: Block) -> Block:
    return block._replace(height=max(block.height, other.height), split=block.split or other.split)


def _ways(
    words: Paragraph, title: Block, said: _Said, room: float, taken: float, letters: Letters
) -> Iterator[Block]:
    """A line each; the discs beside the identity alone; all in one; the identity beside the title."""
    cap, gap, beside = letters.text, 0.8 * letters.gap, room - taken
    identity = words_block(said.identity, beside, cap, gap=gap)
    if said.about:
        about = words_block(said.about, beside, cap, gap=gap)
        apart = stacked([title, about, words_block(said.identity, room, cap, gap=gap)])
        under = [title, identity, words_block(said.about, room, cap, gap=0.35 * letters.gap)]
    else:
        apart, under = stacked([title, identity]), [title, identity]
    yield apart
    yield stacked(under)
    yield stacked([title, words_block(said.both, (beside, room), cap, gap=gap)])
    left = words.ends[-1] * letters.signal + 2 * letters.space
    if beside - left < _BESIDE * cap:
        yield apart
        return
    rows = [abreast((title, words_block(said.identity, beside - left, cap)), (0.0, left))]
    rows += [words_block(said.about, (beside, room), cap, gap=gap)] if said.about else []
    yield stacked(rows)


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
        text = words_in(words_of((Run(number, bold=True),)), size, cap, align="center", ink="white")
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
