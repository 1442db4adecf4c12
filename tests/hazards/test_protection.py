"""What statements ask for at the bench."""

import pytest

from generator.hazards import (
    asks_protection,
    gas_maker,
    grave_as_bought,
    needs_extraction,
    needs_eyewash,
    needs_sign_off,
    oxidiser,
)


def parts(*codes: str) -> tuple[str, ...]:
    return tuple(row.part for row in asks_protection(codes))


# Common practice, no source; the condition notes of UN GHS Annex 3 to P280 from memory.
@pytest.mark.parametrize(
    ("codes", "expected"),
    [
        (("H314",), ("eyes", "face", "hands", "body")),
        (("H318",), ("eyes",)),
        (("H319",), ("eyes",)),
        (("H317",), ("hands",)),
        (("H302",), ()),
        (("H410",), ()),
        (("H315", "H319"), ("eyes", "hands")),
        (("H334",), ("lungs",)),
        (("H302+H312",), ("hands",)),
        ((), ()),
    ],
)
def test_body_parts(codes: tuple[str, ...], expected: tuple[str, ...]) -> None:
    assert parts(*codes) == expected


def test_the_reason_names_its_statements_and_source() -> None:
    eyes = asks_protection(("H319", "H314"))[0]
    assert eyes.because == ("H314", "H319")
    assert "burns" in eyes.why
    assert "practice" in eyes.source


def test_lungs_are_answered_by_extraction() -> None:
    assert asks_protection(("H334",))[0].unless_extraction
    assert not asks_protection(("H314",))[0].unless_extraction


# The codes are those of the checker: no-eyewash, extraction-missing, untrained-role, concentrate.
def test_sets_of_codes() -> None:
    every = (
        "H300",
        "H310",
        "H314",
        "H318",
        "H319",
        "H330",
        "H331",
        "H334",
        "H350",
        "H272",
        "EUH031",
        "H410",
    )
    assert needs_eyewash(every) == ("H314", "H318", "H319")
    assert needs_extraction(every) == ("H330", "H331", "H334")
    assert needs_sign_off(every) == ("H314", "H330", "H334", "H350")
    assert grave_as_bought(every) == ("H300", "H310", "H314", "H330")
    assert oxidiser(every) == ("H272",)
    assert gas_maker(every) == ("H272", "EUH031")
