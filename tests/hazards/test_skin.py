"""Skin corrosion and irritation: the boundary set, specific limits, extreme pH, and the worked example."""

import pytest

from generator.hazards import Composition, Ingredient, read_class, read_limit
from generator.hazards.skin import screen_skin
from generator.hazards.steps import Finding, Part
from generator.units import Quantity, Window, read_numbers_window


def stuff(percent: float, *classes: str, limits: tuple[str, ...] = (), additive: bool = True) -> Part:
    one = Ingredient(
        f"stuff {percent}",
        Quantity(percent, "% w/w"),
        tuple(read_class(text) for text in classes),
        tuple(read_limit(text) for text in limits),
        additive=additive,
    )
    return Part(one, percent)


def screened(*parts: Part, ph: str = "7") -> Finding:
    return screen_skin(parts, Composition("mixture", (), ph=read_numbers_window(ph) if ph else None))


def name(found: Finding) -> str:
    return found.classes[0].name if found.classes else ""


# The boundary set in use elsewhere (read), and table 3.2.3.
@pytest.mark.parametrize(
    ("percent", "text", "expected"),
    [
        (5, "Skin Corr. 1A H314", "Skin Corr. 1A"),
        (4.999, "Skin Corr. 1A H314", "Skin Irrit. 2"),
        (1, "Skin Corr. 1A H314", "Skin Irrit. 2"),
        (0.999, "Skin Corr. 1A H314", ""),
        (10, "Skin Irrit. 2 H315", "Skin Irrit. 2"),
        (9.99, "Skin Irrit. 2 H315", ""),
    ],
)
def test_boundary_set(percent: float, text: str, expected: str) -> None:
    assert name(screened(stuff(percent, text))) == expected


def test_small_shares_do_not_count() -> None:
    """3.2.3.3.1 (read): relevant from 1 %. Twenty times 0.9 % corrosive is not added."""
    assert name(screened(*(stuff(0.9, "Skin Corr. 1A H314") for _ in range(20)))) == ""


def test_corrosive_counts_ten_times_as_irritant() -> None:
    """Table 3.2.3: (10 x 1) + 0 = 10; (10 x 0) + 9 = 9; corrosive below 5 with irritant: 10 x 1 + 1 = 11."""
    assert name(screened(stuff(1, "Skin Corr. 1B H314"), stuff(1, "Skin Irrit. 2 H315"))) == "Skin Irrit. 2"
    assert name(screened(stuff(5, "Skin Irrit. 2 H315"), stuff(4, "Skin Irrit. 2 H315"))) == ""


def test_sub_categories_add_downwards() -> None:
    """Table 3.2.3: 1A below 5 % but 1A + 1B at 5 % is 1B; a part without sub-category makes it plain 1."""
    a, b, c = (stuff(3, f"Skin Corr. {grade} H314") for grade in ("1A", "1B", "1C"))
    assert name(screened(a, b)) == "Skin Corr. 1B"
    assert name(screened(b, c)) == "Skin Corr. 1C"
    assert name(screened(stuff(5, "Skin Corr. 1A H314"), c)) == "Skin Corr. 1A"
    assert name(screened(a, stuff(3, "Skin Corr. 1 H314"))) == "Skin Corr. 1"


SULPHURIC = ("Skin Corr. 1A H314: C >= 15", "Skin Irrit. 2 H315: 5 <= C < 15")
LYE = ("Skin Corr. 1A H314: C >= 5", "Skin Corr. 1B H314: 2 <= C < 5", "Skin Irrit. 2 H315: 0.5 <= C < 2")


# Annex VI limits (read on pages that quote them).
@pytest.mark.parametrize(
    ("percent", "limits", "expected"),
    [
        (15, SULPHURIC, "Skin Corr. 1A"),
        (14.99, SULPHURIC, "Skin Irrit. 2"),
        (5, SULPHURIC, "Skin Irrit. 2"),
        (4.99, SULPHURIC, ""),
        (5, LYE, "Skin Corr. 1A"),
        (4.9, LYE, "Skin Corr. 1B"),
        (2, LYE, "Skin Corr. 1B"),
        (1.9, LYE, "Skin Irrit. 2"),
        (0.5, LYE, "Skin Irrit. 2"),
        (0.49, LYE, ""),
    ],
)
def test_specific_limits(percent: float, limits: tuple[str, ...], expected: str) -> None:
    assert name(screened(stuff(percent, "Skin Corr. 1A H314", limits=limits))) == expected


def test_specific_limits_are_added_as_ratios() -> None:
    """Sum of C over limit (CLP 3.2.3.3.5; memory): 9/15 + 2/5 = 1.0 with a generic one beside it."""
    parts = (stuff(9, "Skin Corr. 1A H314", limits=SULPHURIC), stuff(2, "Skin Corr. 1B H314"))
    found = screened(*parts)
    assert name(found) == "Skin Corr. 1B"
    assert found.steps[0].total == pytest.approx(1.0)


def test_un_example_3_2_3_3a() -> None:
    """UN 2008/23 annex 2 (read): 4 % corrosive of pH 1.8, 5 % Skin 2, 5 % Skin 3, pH 4.0: category 1.

    The corrosive one is a strong acid, for which sums may not hold: 1 % of it is enough (3.2.3.3.4).
    """
    parts = (
        stuff(4, "Skin Corr. 1 H314", additive=False),
        stuff(5, "Skin Irrit. 2 H315"),
        stuff(5, "Skin Irrit. 3 H316"),
        Part(Ingredient("no data", Quantity(86, "% w/w"), None), 86),
    )
    found = screened(*parts, ph="4.0")
    assert name(found) == "Skin Corr. 1"
    assert found.steps[0].clause == "table 3.2.4"


def test_sums_do_not_hold_below_one_percent_either() -> None:
    assert name(screened(stuff(0.99, "Skin Corr. 1 H314", additive=False))) == ""
    assert name(screened(stuff(3, "Skin Irrit. 2 H315", additive=False))) == "Skin Irrit. 2"
    assert name(screened(stuff(2.99, "Skin Irrit. 2 H315", additive=False))) == ""


# 3.2.3.1.2 (read): 2 and less, 11.5 and more.
@pytest.mark.parametrize(
    ("ph", "expected"),
    [
        ("2", "Skin Corr. 1"),
        ("up to 1", "Skin Corr. 1"),
        ("1 to 3", "Skin Corr. 1"),
        ("2.1", ""),
        ("11.4", ""),
        ("11.5", "Skin Corr. 1"),
        ("at least 12", "Skin Corr. 1"),
        ("11 to 12", "Skin Corr. 1"),
        ("up to 8", ""),
        ("", ""),
    ],
)
def test_extreme_ph(ph: str, expected: str) -> None:
    found = screened(ph=ph)
    assert name(found) == expected
    if expected:
        assert "reserve" in found.steps[0].outcome


def test_ph_sides_are_numbers_without_a_unit() -> None:
    assert Window(Quantity(2, ""), None).low == Quantity(2, "")


def test_the_row_shows_its_arithmetic() -> None:
    row = screened(stuff(16.38, "Skin Corr. 1A H314", limits=SULPHURIC)).steps[0]
    assert row.text == "Skin corrosion: 16.38 ÷ 15 (stuff 16.38) = 1.092; limit 1: Skin Corr. 1A H314"
