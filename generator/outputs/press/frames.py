"""The frame of a panel: its signal word white on black, left in a wide panel, on top in a narrow one."""

from generator.outputs.press.blocks import Block, Part, text_block
from generator.outputs.press.drawing import Box, Run, Sign
from generator.outputs.press.letters import DESCENT, Letters
from generator.outputs.press.wrapping import width


def inked(block: Block, letters: Letters) -> Block:
    """The same block without the room under its last base line."""
    return block._replace(height=block.height - DESCENT * letters.text)


def inner_room(room: float, label: float, letters: Letters) -> float:
    """What a frame leaves for its words; `label` is the width of the word at the left, 0 with it on top."""
    return room - label - 2 * letters.gap - letters.bar * (1 if label else 2)


def framed(word: str, sign: str, body: Block, room: float, label: float, letters: Letters) -> Block:
    """A frame with its signal word, at twice the height of the text, and with a sign beside it if named."""
    if label:
        return _word_left(word, sign, body, room, label, letters)
    return _word_top(word, sign, body, room, letters)


def _outline(room: float, height: float, letters: Letters) -> Box:
    half = letters.bar / 2
    return Box(half, half, room - letters.bar, height - letters.bar, line=letters.bar)


def _word(word: str, room: float, letters: Letters) -> Block:
    runs = (Run(word, bold=True),)
    return text_block(runs, room, letters.signal, role="heading", ink="white")


def _word_left(word: str, sign: str, body: Block, room: float, label: float, letters: Letters) -> Block:
    pad = letters.gap
    inside = body.height + 2 * pad + letters.bar
    over = letters.sign + letters.gap if sign else 0.0
    height = max(inside, letters.signal + 2 * pad + over)
    cell = Box(0.0, 0.0, label, height, fill="black")
    parts: list[Part] = [(0.0, 0.0, _outline(room, height, letters)), (0.0, 0.0, cell)]
    top = (height - letters.signal + over) / 2
    if sign:
        octagon = Sign(0.0, 0.0, letters.sign, sign, word)
        parts.append(((label - letters.sign) / 2, top - over, octagon))
    head = _word(word, label - pad, letters)
    wide = width(word, letters.signal, heavy=True)
    parts.append((max(pad, (label - wide) / 2), top, head))
    parts.append((label + letters.gap, (height - inside + letters.bar) / 2 + pad, body))
    return Block(height, tuple(parts), split=body.split or head.split)


def _word_top(word: str, sign: str, body: Block, room: float, letters: Letters) -> Block:
    pad = letters.gap
    left = pad + letters.bar
    bar = letters.signal + 2.4 * pad
    height = bar + body.height + 2 * pad + letters.bar
    strip = Box(0.0, 0.0, room, bar, fill="black")
    parts: list[Part] = [(0.0, 0.0, _outline(room, height, letters)), (0.0, 0.0, strip)]
    start = left
    if sign:
        side = bar - 1.2 * pad
        parts.append((left, 0.6 * pad, Sign(0.0, 0.0, side, sign, word)))
        start += side + pad
    head = _word(word, room - start - pad, letters)
    parts += [(start, 1.2 * pad, head), (left, bar + pad, body)]
    one_line = width(word, letters.signal, heavy=True) <= room - start - pad
    return Block(height, tuple(parts), split=body.split or not one_line)
