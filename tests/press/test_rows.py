"""A row is measured in every try and drawn once: what is drawn is as high as what was measured."""

import pytest

from generator.outputs.press.blocks import Block, marks_of
from generator.outputs.press.drawing import Text
from generator.outputs.press.fitting import setting
from generator.outputs.press.letters import DESCENT, Letters
from generator.outputs.press.steps import DENSITIES, Density, set_steps, step_blocks
from generator.views.card import CardView
from tests.press.demo_cards import all_cards, name

HAIR = 1e-6


def bottom(block: Block) -> float:
    """How far down the letters of a block reach; a number in its disc is as high as the disc."""
    marks = marks_of(block, 0.0, 0.0)
    return max(mark.y + mark.height for mark in marks if isinstance(mark, Text) and mark.ink == "black")


@pytest.mark.parametrize("density", DENSITIES)
def test_every_row_of_the_demo_is_as_high_as_its_letters(density: Density) -> None:
    """With what hangs under its last line a row ends there, unless marks or a disc reach further down."""
    checked = 0
    for card in all_cards():
        steps = set_steps(card, density)
        for room in (90.0, 125.0, 250.0):
            letters = Letters(3.4)
            rows = [row for stay in steps.stays for row in stay.rows]
            blocks = [block for block in step_blocks(steps, room, letters) if not block.keep]
            for row, block in zip(rows, blocks, strict=True):
                ends = bottom(block) + DESCENT * letters.text
                assert ends <= block.height + HAIR, name(card)
                if not row.marks:
                    assert ends == pytest.approx(block.height), name(card)
                    checked += 1
    assert checked > 1000


@pytest.mark.parametrize("card", [card for card in all_cards() if card.steps][:12], ids=name)
def test_letters_of_twice_the_size_in_twice_the_room_take_twice_the_height(card: CardView) -> None:
    made = setting(card).plan
    steps = set_steps(card, made.density)
    small = step_blocks(steps, 100.0, Letters(3.0))
    large = step_blocks(steps, 200.0, Letters(6.0))
    # The room of a time has a hundredth of a millimetre to spare, whatever the letters.
    assert [block.height * 2 for block in small] == pytest.approx([block.height for block in large], rel=0.02)
