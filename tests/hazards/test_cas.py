"""CAS check digits of published numbers."""

import pytest

from generator.hazards import cas_check_digit, cas_digit_right, cas_well_formed, known_substances


# Numbers as published by their registry for everyday substances.
@pytest.mark.parametrize(
    "cas",
    ["7732-18-5", "7664-93-9", "7647-01-0", "7758-99-8", "7775-27-1", "144-55-8", "67-63-0", "58-08-2"],
)
def test_published_numbers(cas: str) -> None:
    assert cas_digit_right(cas)


def test_caffeine_by_hand() -> None:
    """58-08-2: 8x1 + 0x2 + 8x3 + 5x4 = 52, 52 mod 10 = 2."""
    assert cas_check_digit("58-08") == 2


@pytest.mark.parametrize("cas", ["7664-93-8", "7646-93-9", "7732-18-6"])
def test_a_slip_is_seen(cas: str) -> None:
    assert cas_well_formed(cas)
    assert not cas_digit_right(cas)


@pytest.mark.parametrize(
    "cas", ["", "7664939", "7664-93-9 ", "7-18-5", "12345678-18-5", "٧٦٦٤-٩٣-٩", "7664-93-9\n"]
)
def test_what_is_no_cas_number(cas: str) -> None:
    assert not cas_well_formed(cas)
    assert not cas_digit_right(cas)


def test_every_number_that_ships_is_right() -> None:
    assert [entry.cas for entry in known_substances() if not cas_digit_right(entry.cas)] == []
