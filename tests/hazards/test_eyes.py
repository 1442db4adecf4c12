"""Serious eye damage and eye irritation."""

import pytest

from generator.hazards import Composition, Ingredient, read_class, read_limit
from generator.hazards.eyes import screen_eyes
from generator.hazards.steps import Part
from generator.units import Quantity, read_numbers_window


def stuff(percent: float, *classes: str, limits: tuple[str, ...] = (), additive: bool = True) -> Part:
    one = Ingredient(
        "stuff",
        Quantity(percent, "% w/w"),
        tuple(read_class(text) for text in classes),
        tuple(read_limit(text) for text in limits),
        additive=additive,
    )
    return Part(one, percent)


def name(*parts: Part, ph: str = "7") -> str:
    found = screen_eyes(parts, Composition("mixture", (), ph=read_numbers_window(ph)))
    return found.classes[0].name if found.classes else ""


# Table 3.3.3: 3 % read on a secondary page; 1 %, 10 % from memory.
@pytest.mark.parametrize(
    ("percent", "text", "expected"),
    [
        (3, "Eye Dam. 1 H318", "Eye Dam. 1"),
        (2.99, "Eye Dam. 1 H318", "Eye Irrit. 2"),
        (1, "Eye Dam. 1 H318", "Eye Irrit. 2"),
        (0.99, "Eye Dam. 1 H318", ""),
        (3, "Skin Corr. 1B H314", "Eye Dam. 1"),
        (10, "Eye Irrit. 2 H319", "Eye Irrit. 2"),
        (9.9, "Eye Irrit. 2 H319", ""),
    ],
)
def test_boundaries(percent: float, text: str, expected: str) -> None:
    assert name(stuff(percent, text)) == expected


def test_corrosive_and_damaging_counts_once() -> None:
    assert name(stuff(2, "Skin Corr. 1B H314", "Eye Dam. 1 H318")) == "Eye Irrit. 2"


def test_damaging_and_corrosive_ones_are_added() -> None:
    assert name(stuff(1.5, "Skin Corr. 1B H314"), stuff(1.5, "Eye Dam. 1 H318")) == "Eye Dam. 1"


def test_irritants_are_added_to_ten_times_the_damaging() -> None:
    assert name(stuff(5, "Eye Irrit. 2 H319"), stuff(5, "Eye Irrit. 2 H319")) == "Eye Irrit. 2"


PEROXIDE = (
    "Skin Corr. 1B H314: 50 <= C < 70",
    "Eye Dam. 1 H318: 8 <= C < 50",
    "Eye Irrit. 2 H319: 5 <= C < 8",
)


# Limits of hydrogen peroxide read on the registry of intentions of ECHA.
@pytest.mark.parametrize(
    ("percent", "expected"), [(8, "Eye Dam. 1"), (7.9, "Eye Irrit. 2"), (5, "Eye Irrit. 2"), (4.9, "")]
)
def test_specific_limits(percent: float, expected: str) -> None:
    assert name(stuff(percent, "Skin Corr. 1A H314", limits=PEROXIDE)) == expected


def test_an_acid_with_a_limit_for_the_skin_keeps_it_for_the_eye() -> None:
    limits = ("Skin Corr. 1A H314: C >= 15", "Eye Irrit. 2 H319: 5 <= C < 15")
    assert name(stuff(14, "Skin Corr. 1A H314", limits=limits)) == "Eye Irrit. 2"
    assert name(stuff(15, "Skin Corr. 1A H314", limits=limits)) == "Eye Dam. 1"


def test_extreme_ph_damages_eyes() -> None:
    assert name(ph="1") == "Eye Dam. 1"


def test_where_sums_do_not_hold() -> None:
    assert name(stuff(1, "Eye Dam. 1 H318", additive=False)) == "Eye Dam. 1"
    assert name(stuff(0.9, "Eye Dam. 1 H318", additive=False)) == ""
    assert name(stuff(3, "Eye Irrit. 2 H319", additive=False)) == "Eye Irrit. 2"
