"""Which words stay together at the end of a line, and which word is not left alone on the last one."""

import pytest

from generator.outputs.press.drawing import Run
from generator.outputs.press.holding import held
from generator.outputs.press.wrapping import broken


def lines(text: str, room: float) -> list[str]:
    """The lines of a text in letters of 3 mm."""
    return ["".join(run.text for run in line) for line in broken((Run(text),), (room,), 3.0)]


@pytest.mark.parametrize(
    ("text", "together"),
    [
        ("or extension 417", "extension 417"),
        ("Then step 39 again", "step 39"),
        ("Printed Circuits Lab B14", "Lab B14"),
        ("Ammonia buffer pH 10: 10 mL", "pH 10:"),
        ("Methyl orange solution 0.1 %: 0.1 mL", "0.1 %:"),
        ("up to 8 min after", "8 min"),
        ("eye damage \u00b7 May cause", "damage \u00b7"),
    ],
)
def test_words_that_stay_together(text: str, together: str) -> None:
    words = text.split(" ")
    first, second = together.split(" ")
    number = words.index(second)
    assert words[number - 1] == first
    assert number in held(words)


@pytest.mark.parametrize(
    "text", ["Rinse it. 2 times", "Nitrile gloves, 2 pairs", "Lower the board in", "a mm scale"]
)
def test_words_that_may_part(text: str) -> None:
    assert not {1, 2} & set(held(text.split(" ")[:3]))


def test_a_number_takes_the_word_before_it_to_the_next_line() -> None:
    wide = lines("Duty technician: room or extension 417", 60.0)
    assert wide == ["Duty technician: room or", "extension 417"]
    for room in range(26, 80, 2):
        assert "417" not in [line.split(" ")[0] for line in lines("the room or extension 417", float(room))]


def test_a_narrow_line_is_filled_all_the_same() -> None:
    """Nothing is lost where even two words have no room."""
    assert "".join(lines("extension 417", 8.0)).replace(" ", "") == "extension417"


def test_a_short_last_word_is_not_left_alone() -> None:
    text = "Put the board on the cooling rack"
    found = {room: lines(text, float(room)) for room in range(30, 90)}
    for room, made in found.items():
        assert " ".join(made) == text
        if len(made) == 2:
            assert made[-1] != "rack", room
    assert any(made[-1] == "cooling rack" for made in found.values())
