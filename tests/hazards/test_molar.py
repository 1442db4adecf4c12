"""Molar masses against molmass, and amounts counted as something else."""

import molmass
import pytest

from generator.hazards.molar import atoms_of, mass_of_whole, molar_mass
from generator.problems import NewelError

FORMULAS = [
    "H2SO4",
    "HCl",
    "CuSO4.5H2O",
    "(NH4)2S2O8",
    "Na2CO3",
    "NaHCO3",
    "C10H16N2O8",
    "K4Fe(CN)6",
    "SnCl2",
]


@pytest.mark.parametrize("formula", FORMULAS)
def test_against_molmass(formula: str) -> None:
    anhydrous = formula.replace(".5H2O", "(H2O)5")
    assert molar_mass(formula) == pytest.approx(molmass.Formula(anhydrous).mass, rel=2e-4)


def test_chloride_in_hydrochloric_acid_by_hand() -> None:
    """(1.008 + 35.45) / 35.45."""
    assert mass_of_whole("chloride", "HCl") == pytest.approx(36.458 / 35.45)


def test_copper_in_its_salt_by_hand() -> None:
    """249.68 / 63.546 (OpenStax gives CuSO4.5H2O as 249.69)."""
    assert mass_of_whole("copper", "CuSO4.5H2O") == pytest.approx(3.929, rel=1e-3)
    assert mass_of_whole("CuSO4", "CuSO4.5H2O") == pytest.approx(249.685 / 159.608, rel=1e-4)


def test_two_of_them_in_one_whole() -> None:
    assert mass_of_whole("Cl", "SnCl2") == pytest.approx(189.61 / 70.90, rel=1e-4)


def test_water_of_crystals() -> None:
    assert atoms_of("CuSO4·5H2O") == atoms_of("CuSO4.5H2O") == {"Cu": 1, "S": 1, "O": 9, "H": 10}


@pytest.mark.parametrize(
    "formula", ["", "hello", "H2SO4)", "(H2", "Xx2", "H2-SO4", "5", "__import__('os')"]
)
def test_what_is_no_formula(formula: str) -> None:
    with pytest.raises(NewelError):
        molar_mass(formula)


def test_a_part_that_is_not_inside() -> None:
    with pytest.raises(NewelError) as caught:
        mass_of_whole("copper", "HCl")
    assert caught.value.id == "counted-as"
