"""EPA groups and pairs."""

import pytest

from generator.hazards import group_name, meeting, meetings
from generator.hazards.reactivity import BLANK_SAYS, NOT_HELD_SAYS


# EPA-600/2-80-076, rows read in two copies of the chart (3 to 16) or in one transcription (the rest).
@pytest.mark.parametrize(
    ("first", "second", "codes"),
    [
        (1, 11, ("GT", "GF")),
        (3, 2, ("H", "G")),
        (4, 3, ("H", "P")),
        (10, 1, ("H",)),
        (104, 4, ("H", "F")),
        (1, 104, ("H", "GT")),
        (22, 104, ("H", "F", "E")),
        (106, 33, ("GT", "GF")),
    ],
)
def test_pairs_in_either_order(first: int, second: int, codes: tuple[str, ...]) -> None:
    assert set(meeting(first, second).codes) == set(codes)
    assert meeting(first, second) == meeting(second, first)


def test_words() -> None:
    assert meeting(1, 11).says == "toxic gas; flammable gas"
    assert meeting(1, 10).names == ("Acids, Mineral, Non-oxidizing", "Caustics")


def test_blank_is_not_safe() -> None:
    assert meeting(4, 10).says == BLANK_SAYS
    assert "not a statement of safety" in BLANK_SAYS
    assert not meeting(4, 10).reacts


def test_a_pair_not_held_is_not_blank() -> None:
    assert meeting(1, 8).says == NOT_HELD_SAYS


def test_doubtful_cells_say_so() -> None:
    found = meeting(105, 104)
    assert (found.certain, found.codes) == (False, ("H", "F", "E"))
    assert "memory" in found.says


def test_107_meets_nothing() -> None:
    assert meeting(107, 29).reacts
    assert "do not mix" in meeting(106, 107).says


def test_groups_of_two_substances() -> None:
    assert [found.groups for found in meetings((1, 2), (10,))] == [(1, 10), (2, 10)]
    assert meetings((4,), (10,)) == ()


def test_the_chart_has_41_groups() -> None:
    assert len([n for n in range(1, 108) if group_name(n) is not None]) == 41
    with pytest.raises(KeyError):
        meeting(1, 99)


def test_a_cell_that_the_transcription_lost_is_no_blank() -> None:
    # 2-104, oxidising acid and strong oxidiser: absent from the transcription, not read on the paper chart
    assert meeting(2, 104).says == NOT_HELD_SAYS
