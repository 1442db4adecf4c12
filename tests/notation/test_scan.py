"""A line that is passed by as good holds no slip: reading every line closely finds the same."""

import random
import re
import tracemalloc
from pathlib import Path

import pytest

from generator.notation import raw_values
from generator.notation.scan import scan

PIECES = (
    *"\"'{}[],:#-|>&*!%@`\\", ": ", " #", "- ", "  ", "key: ", "{a: b}", "[a, b]", "''", "word", "8 min",
)  # fmt: skip


@pytest.mark.parametrize("seed", range(20))
def test_a_good_line_hides_no_slip(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    chance = random.Random(seed)
    texts = [file.read_text("utf-8") for file in sorted(Path("procedures").glob("*.yml"))]
    lines = [line for text in texts for line in text.split("\n")]
    spoilt = [_spoilt(line, chance) for line in chance.sample(lines, 400)]
    quickly = list(scan("\n".join(spoilt), "x.yml"))
    monkeypatch.setattr(raw_values, "_WORDS", re.compile("(?!)"))
    monkeypatch.setattr(raw_values, "_BRACES", re.compile("(?!)"))
    assert list(scan("\n".join(spoilt), "x.yml")) == quickly


def _spoilt(line: str, chance: random.Random) -> str:
    for _ in range(chance.randrange(3)):
        at = chance.randrange(len(line) + 1)
        line = line[:at] + chance.choice(PIECES) + line[at + chance.randrange(3) :]
    return line


def test_a_dash_alone_on_its_line_begins_an_entry() -> None:
    assert not list(scan("a:\n  -\n    b: c\n  - \n    b: d\n", "x.yml"))
    [slip] = scan("a: -\n", "x.yml")
    assert slip.rule == "yaml-sign"


def test_many_slips_in_one_line_take_no_more_room_than_the_line() -> None:
    line = "[" + "!a, " * 4000 + "b]"
    tracemalloc.start()
    try:
        found = raw_values.plain_values([line])
        peak = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert len(found) == 4000
    assert peak < 5_000_000
