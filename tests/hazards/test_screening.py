"""Whole mixtures: the copper bath of the demo lab worked by hand, and what is said to be unknown."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.hazards import (
    CAUTION,
    Composition,
    Ingredient,
    NotScreened,
    Screening,
    declared_ingredient,
    read_class,
    screen,
)
from generator.units import Quantity, read_numbers_window, read_quantity


def q(text: str) -> Quantity:
    return read_quantity(text)


def water() -> Ingredient:
    return declared_ingredient("deionised water", None, (), cas="7732-18-5")


def copper_bath() -> Composition:
    return Composition(
        "Acid copper bath",
        (
            declared_ingredient("copper sulfate", q("72 g/L"), ("H302", "H318", "H410"), cas="7758-99-8"),
            declared_ingredient(
                "sulfuric acid 96 %",
                q("190 g/L"),
                ("H290", "H314"),
                cas="7664-93-9",
                counted_as="H2SO4",
                strength=q("96 % w/w"),
                density=q("1.84 kg/L"),
            ),
            declared_ingredient(
                "hydrochloric acid 37 %",
                q("60 mg/L"),
                ("H290", "H314", "H335"),
                cas="7647-01-0",
                counted_as="chloride",
                strength=q("37 % w/w"),
                density=q("1.18 kg/L"),
            ),
            declared_ingredient("copper brightener", q("5 mL/L"), (), bought_mixture=True),
            water(),
        ),
        q("1.16 kg/L"),
        read_numbers_window("up to 1"),
    )


def screened(composition: Composition) -> Screening:
    found = screen(composition)
    assert isinstance(found, Screening), found
    return found


def test_the_copper_bath_by_hand() -> None:
    """72 g/L CuSO4.5H2O and 190 g/L H2SO4 in 1 L that weighs 1160 g; limits of Annex VI as named below.

    shares       72/1160 = 6.207 %         190/1160 = 16.379 %
    by mouth     100/(6.207/481) = 7749 mg/kg > 2000: none   (ATE 481: memory)
    skin         16.379/15 = 1.0920 >= 1: Skin Corr. 1A      (15 %: secondary)
    eyes         6.207/3 + 16.379/15 = 2.0690 + 1.0920 = 3.1609 >= 1: Eye Dam. 1
    water acute  10 x 6.207 = 62.07 >= 25: Acute 1           (M 10: memory)
    water long   6.207 < 25; 10 x 6.207 = 62.07 >= 25: Chronic 2 (M 1: memory)
    """
    found = screened(copper_bath())
    shares = {row.ingredient.name: row.percent for row in found.shares}
    assert shares["copper sulfate"] == pytest.approx(100 * 72 / 1160)
    assert shares["sulfuric acid 96 %"] == pytest.approx(100 * 190 / 1160)
    rows = {step.rule: step for step in found.steps if step.terms}
    assert 100 / rows["Acute toxicity by mouth"].total == pytest.approx(7749, abs=1)
    assert rows["Skin corrosion"].total == pytest.approx(1.0920, abs=1e-4)
    assert rows["Serious eye damage"].total == pytest.approx(3.1609, abs=1e-4)
    assert rows["Aquatic Acute 1"].total == pytest.approx(62.07, abs=1e-2)
    assert rows["Aquatic Chronic 1"].total == pytest.approx(6.207, abs=1e-3)
    assert rows["Aquatic Chronic 2"].total == pytest.approx(62.07, abs=1e-2)
    assert [one.name for one in found.classes] == [
        "Skin Corr. 1A",
        "Eye Dam. 1",
        "Aquatic Acute 1",
        "Aquatic Chronic 2",
    ]
    assert found.statements == ("H314", "H400", "H411")
    assert (found.signal, found.pictograms) == ("Danger", ("GHS05", "GHS09"))


def test_what_is_not_known_is_listed() -> None:
    found = screened(copper_bath())
    said = {(row.about, row.why.split(":")[0]) for row in found.unknown}
    assert (
        "copper brightener",
        "share not known; it is stated as not classified, so no sum needs it",
    ) in said
    physical = next(row.why for row in found.unknown if row.about == "physical hazards")
    assert "H290" in physical
    assert found.caution == CAUTION
    assert "supplier's sheet" in CAUTION


def test_an_estimated_density_is_said() -> None:
    bath = copper_bath()
    found = screened(Composition(bath.name, bath.ingredients[:2] + bath.ingredients[4:], None, bath.ph))
    assert found.density is not None
    assert found.density.estimated
    assert any(row.about == "density" for row in found.unknown)
    assert found.statements == ("H314", "H400", "H411")


def test_no_ph_is_said() -> None:
    found = screened(Composition("soda", (declared_ingredient("soda", q("1 % w/w"), ("H319",)), water())))
    assert any(row.about == "pH" for row in found.unknown)
    assert found.statements == ()
    assert found.signal == ""


def test_undeclared_hazards_are_unknown_not_none() -> None:
    mystery = declared_ingredient("mystery", q("20 % w/w"), None)
    found = screened(Composition("x", (mystery, water())))
    whys = [row.why for row in found.unknown if row.about in ("mystery", "acute toxicity")]
    assert "its hazards are not declared" in whys
    assert any("20 % of the mixture" in why for why in whys)


def test_supplements_from_their_own_limit() -> None:
    """EUH031 of sodium hypochlorite from 5 % active chlorine (from memory)."""
    for percent, expected in ((5, ("EUH031",)), (4.9, ())):
        bleach = declared_ingredient(
            "bleach", q(f"{percent} % w/w"), ("H314", "H318", "H400", "H410", "EUH031"), cas="7681-52-9"
        )
        assert screened(Composition("x", (bleach, water()))).supplements == expected


def test_no_screening_says_why() -> None:
    oil = declared_ingredient("concentrate", q("6 % v/v"), ("H319", "H412"), bought_mixture=True)
    found = screen(Composition("x", (oil, water()), q("1.00 kg/L")))
    assert isinstance(found, NotScreened)
    assert found.problems[0].fix == "Write the density of concentrate from its sheet."


_ORDER = {"": 0, "Skin Irrit. 2": 1, "Skin Corr. 1B": 2}


@given(st.floats(0, 100), st.floats(0, 100))
def test_more_of_a_corrosive_is_never_milder(one: float, other: float) -> None:
    def grade(percent: float) -> int:
        acid = Ingredient("acid", Quantity(percent, "% w/w"), (read_class("Skin Corr. 1B H314"),))
        names = [held.name for held in screened(Composition("x", (acid, water()))).classes]
        return _ORDER[next((name for name in names if name.startswith("Skin")), "")]

    low, high = sorted((one, other))
    assert grade(low) <= grade(high)
