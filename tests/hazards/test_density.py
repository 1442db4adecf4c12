"""The estimated density of a watery bath against published densities."""

import pytest

from generator.hazards import Composition, Ingredient
from generator.hazards.density import density_used
from generator.units import read_quantity

WATER = Ingredient("water", None, cas="7732-18-5")


# kg/L at 20 degC. NaOH 10 %: OpenStax Chemistry 2e 3.4. H2SO4 and NaCl: CRC Handbook (from memory).
# Grams a litre = 10 x % x density.
@pytest.mark.parametrize(
    ("name", "grams", "density"),
    [
        ("NaOH 10 %", 110.9, 1.109),
        ("H2SO4 10 %", 106.6, 1.066),
        ("H2SO4 20 %", 227.9, 1.1394),
        ("NaCl 10 %", 107.1, 1.0707),
        ("NaCl 20 %", 229.6, 1.1478),
    ],
)
def test_within_five_percent(name: str, grams: float, density: float) -> None:
    one = Ingredient(name, read_quantity(f"{grams} g/L"))
    found = density_used(Composition("bath", (one, WATER)))
    assert found is not None
    assert found.estimated
    assert "estimated" in found.says
    assert found.value.number == pytest.approx(density, rel=0.05)
    assert found.value.number <= density * 1.01


def test_a_given_density_is_used() -> None:
    one = Ingredient("salt", read_quantity("100 g/L"))
    found = density_used(Composition("bath", (one, WATER), read_quantity("1160 kg/m3")))
    assert found is not None
    assert found.value.number == pytest.approx(1.16)
    assert not found.estimated


@pytest.mark.parametrize(
    "ingredients",
    [
        (Ingredient("salt", read_quantity("100 g/L")),),
        (Ingredient("salt", read_quantity("100 g/L")), Ingredient("alcohol", None)),
        (Ingredient("salt", read_quantity("900 g/L")), WATER),
        (Ingredient("oil", read_quantity("10 mL/L"), None), WATER),
    ],
)
def test_no_estimate_where_it_would_be_a_guess(ingredients: tuple[Ingredient, ...]) -> None:
    assert density_used(Composition("bath", ingredients)) is None
