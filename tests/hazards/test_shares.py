"""Shares in % w/w from the units that authors use; what cannot be worked out is refused with a fix."""

import pytest

from generator.hazards import Composition, Ingredient, NotScreened, Shares, shares_of
from generator.units import Quantity, read_quantity

WATER = Ingredient("water", None, cas="7732-18-5")


def q(text: str) -> Quantity:
    return read_quantity(text)


def mixture(*ingredients: Ingredient, density: str = "") -> Composition:
    return Composition("bath", ingredients, q(density) if density else None)


def percents(composition: Composition) -> list[float | None]:
    found = shares_of(composition)
    assert isinstance(found, Shares), found
    return [row.percent for row in found.rows]


def refused(composition: Composition) -> tuple[str, str]:
    found = shares_of(composition)
    assert isinstance(found, NotScreened), found
    return found.problems[0].message, found.problems[0].fix


# Each line by hand: g/L / (10 x kg/L).
@pytest.mark.parametrize(
    ("amount", "expected"),
    [
        ("100 g/L", 8.0),
        ("50000 mg/L", 4.0),
        ("1 kg/m3", 0.08),
        ("10 % w/w", 10.0),
        ("500 ppm", 0.05),
        ("100 mL/L", 100 * 1.84 / 12.5),
        ("10 % v/v", 100 * 1.84 / 12.5),
        ("2 mol/L", 2 * 98.07 / 12.5),
    ],
)
def test_units(amount: str, expected: float) -> None:
    one = Ingredient("acid", q(amount), formula="H2SO4", density=q("1.84 kg/L"))
    assert percents(mixture(one, WATER, density="1.25 kg/L"))[0] == pytest.approx(expected, rel=1e-3)


def test_strength_counts_where_limits_speak_of_the_pure_substance() -> None:
    """100 mL/L of 96 % acid of 1.84 kg/L in a bath of 1.10 kg/L: 184 g/L as bought, 176.6 g/L pure."""
    amount = q("100 mL/L")
    pure = Ingredient("acid", amount, strength=q("96 % w/w"), density=q("1.84 kg/L"), of_pure=True)
    bought = Ingredient("acid", amount, strength=q("96 % w/w"), density=q("1.84 kg/L"))
    assert percents(mixture(pure, WATER, density="1.10 kg/L"))[0] == pytest.approx(184 / 11 * 0.96)
    assert percents(mixture(bought, WATER, density="1.10 kg/L"))[0] == pytest.approx(184 / 11)


def test_counted_as_another_thing() -> None:
    """60 mg/L as chloride is 61.7 mg/L HCl; in a bath of 1.16 kg/L 0.00532 %."""
    one = Ingredient("acid", q("60 mg/L"), counted_as="chloride", formula="HCl", of_pure=True)
    assert percents(mixture(one, WATER, density="1.16 kg/L"))[0] == pytest.approx(0.005319, rel=1e-3)


def test_recipes_by_weight_by_volume_and_in_parts() -> None:
    weighed = mixture(Ingredient("a", q("150 g")), Ingredient("b", q("0.05 kg")))
    assert percents(weighed) == [pytest.approx(75), pytest.approx(25)]
    poured = mixture(Ingredient("a", q("100 mL"), density=q("0.8 kg/L")), Ingredient("b", q("20 g")))
    assert percents(poured) == [pytest.approx(80), pytest.approx(20)]
    parts = mixture(Ingredient("a", q("100 parts")), Ingredient("b", q("32 parts")))
    assert percents(parts) == [pytest.approx(75.76, rel=1e-3), pytest.approx(24.24, rel=1e-3)]


def test_the_rest_takes_what_is_left_and_nothing_else_is_unnamed() -> None:
    one = Ingredient("salt", q("10 % w/w"))
    found = shares_of(mixture(one, WATER))
    assert isinstance(found, Shares)
    assert [row.percent for row in found.rows] == [10, 90]
    assert found.unnamed == 0
    assert found.density is None


def test_without_a_rest_the_remainder_is_unnamed() -> None:
    found = shares_of(mixture(Ingredient("salt", q("10 % w/w"))))
    assert isinstance(found, Shares)
    assert found.unnamed == 90


def test_an_unclassified_ingredient_needs_no_share() -> None:
    found = shares_of(mixture(Ingredient("additive", q("5 mL/L")), WATER, density="1.1 kg/L"))
    assert isinstance(found, Shares)
    assert found.rows[0].percent is None


UNKNOWN = None


@pytest.mark.parametrize(
    ("ingredients", "density", "message", "fix"),
    [
        ((), "", "made of nothing", "made of"),
        ((Ingredient("a", q("70 % w/w")), Ingredient("b", q("40 % w/w"))), "", "110 %", "Correct"),
        ((Ingredient("a", q("10 %"), UNKNOWN), WATER), "", "weight or by volume", "% w/w"),
        ((Ingredient("a", q("10 mL/L"), UNKNOWN), WATER), "1.0 kg/L", "by volume", "density of a"),
        ((Ingredient("a", q("10 g/L"), UNKNOWN),), "", "density of the mixture", "Weigh"),
        ((Ingredient("a", q("1 mol/L"), UNKNOWN), WATER), "1.0 kg/L", "no formula", "g/L"),
        ((WATER, Ingredient("oil", None)), "", "both the rest", "amount"),
        ((Ingredient("a", Quantity(-1, "g/L")), WATER), "1.0 kg/L", "below zero", "what goes in"),
        ((Ingredient("a", q("10 g/L")), WATER), "1160 kg/L", "no liquid", "Weigh"),
        (
            (Ingredient("a", q("10 g"), UNKNOWN), Ingredient("b", q("3 parts"), UNKNOWN)),
            "",
            "no share",
            "every",
        ),
        ((Ingredient("a", q("10 min"), UNKNOWN), WATER), "1.0 kg/L", "no share", "every"),
        (
            (Ingredient("a", q("1 g/L"), UNKNOWN, counted_as="copper", formula="HCl"), WATER),
            "1 kg/L",
            "not part of",
            "Count",
        ),
    ],
)
def test_refused_with_a_fix(
    ingredients: tuple[Ingredient, ...], density: str, message: str, fix: str
) -> None:
    said, mend = refused(mixture(*ingredients, density=density))
    assert message in said
    assert fix in mend
