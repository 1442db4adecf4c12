"""Constants against general-purpose packages."""

import periodictable
import pytest
from molmass import Formula as Molecule
from scipy import constants as codata

from generator.formulas import constants
from generator.formulas.constants import METALS
from generator.formulas.symbols import Symbol
from generator.formulas.tape import Constant

MOLAR_MASSES = [
    (constants.COPPER_MOLAR_MASS, "Cu", "Cu"),
    (constants.COPPER_SULFATE_MOLAR_MASS, "CuSO4(H2O)5", "CuSO4(H2O)5"),
    (constants.SULFURIC_ACID_MOLAR_MASS, "H2SO4", "H2SO4"),
    (constants.HYDROCHLORIC_ACID_MOLAR_MASS, "HCl", "HCl"),
    (constants.CHLORINE_MOLAR_MASS, "Cl", "Cl"),
    (constants.HYDROGEN_CARBONATE_MOLAR_MASS, "NaHCO3", "NaHCO3"),
]
ELEMENTS = {"copper": "Cu", "nickel": "Ni", "zinc": "Zn", "silver": "Ag", "chromium": "Cr"}


def value(symbol: Symbol) -> float:
    assert isinstance(symbol.node, Constant)
    assert symbol.node.source
    return symbol.node.value


def test_faraday_constant() -> None:
    assert value(constants.FARADAY) == pytest.approx(codata.value("Faraday constant"), rel=1e-9)
    assert value(constants.FARADAY) == pytest.approx(codata.e * codata.N_A, rel=1e-9)


@pytest.mark.parametrize(("symbol", "one", "other"), MOLAR_MASSES, ids=[row[1] for row in MOLAR_MASSES])
def test_molar_masses(symbol: Symbol, one: str, other: str) -> None:
    """Both packages; they differ among themselves by some parts in a hundred thousand."""
    grams = value(symbol) * 1000
    assert grams == pytest.approx(Molecule(one).mass, rel=1e-4)
    assert grams == pytest.approx(periodictable.formula(other).mass, rel=1e-4)


@pytest.mark.parametrize("row", METALS.rows, ids=lambda row: row.name)
def test_metals(row: object) -> None:
    name = row.name  # type: ignore[attr-defined]
    record = METALS.record(name)
    assert record is not None
    element = getattr(periodictable, ELEMENTS[name])
    assert record["molar_mass"] * 1000 == pytest.approx(Molecule(ELEMENTS[name]).mass, rel=1e-5)
    assert record["molar_mass"] * 1000 == pytest.approx(element.mass, rel=1e-5)
    # Handbooks differ in the third figure of a density.
    assert record["density"] / 1000 == pytest.approx(element.density, rel=6e-3)
    assert record["charges"] in element.ions


def test_annealed_copper() -> None:
    """NBS Handbook 100 (1966): 0.15328 ohm g/m2 at 20 degC and 8.89 g/cm3, which is 1/58 ohm mm2/m."""
    from generator.formulas.library.electricity import RESISTIVITY

    default = RESISTIVITY.default_quantity
    assert default is not None
    assert default.si == pytest.approx(0.15328 / 8.89 * 1e-6, rel=1e-4)
    assert default.si == pytest.approx(1e-6 / 58, rel=1e-4)
