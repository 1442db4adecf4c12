"""A short run through each door of `make fuzz`, without its eye on coverage: the same inputs every time."""

import random

import pytest

from tests.hostile.doors import DOORS
from tests.hostile.mutation import DEEDS, WORDS_ONLY, mutate
from tests.hostile.seeds import SEEDS

TURNS = {"reader": 200, "units": 1000, "walk": 40, "views": 10}
SIGNS = b" \n\t:#-{}[],'\"&*!|>%@`?0123456789abc\xc2\xb0\xe2\x80\xae\xff\x00"


def torn(data: bytes, dice: random.Random) -> bytes:
    """A few bytes taken out or put in."""
    for _ in range(dice.randint(1, 4)):
        at = dice.randint(0, len(data))
        put = bytes(dice.choice(SIGNS) for _ in range(dice.randint(0, 3)))
        data = data[:at] + put + data[at + dice.choice((0, 0, 1, 9)) :]
    return data


@pytest.mark.parametrize("door", DOORS)
def test_a_door_stands_a_short_run(door: str) -> None:
    dice = random.Random(door)
    seeds = SEEDS[door]()
    understood = 0
    for turn in range(TURNS[door]):
        seed = seeds[turn % len(seeds)]
        if door in ("walk", "views") and turn % 8:
            data = mutate(seed, turn, WORDS_ONLY if door == "views" and turn % 3 else DEEDS)
        else:
            data = torn(seed, dice)
        understood += DOORS[door](data)
    assert understood, "nothing came through: the inputs are too strange to try anything"
