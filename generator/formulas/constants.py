"""Constants of nature and of metals, in one place with their sources."""

from generator.formulas.inputs import Choice, Table, TableField, TableRow
from generator.formulas.symbols import Symbol, constant
from generator.units import UNITS
from generator.units.quantity import to_si

_CODATA = "CODATA 2018, exact since the SI of 2019"
_WEIGHTS = "IUPAC standard atomic weights"
_DENSITY = "density at 20 °C as tabulated for the element by mendeleev 1.3.0"


def _constant(name: str, symbol: str, number: float, unit: str, source: str) -> Symbol:
    return constant(name, symbol, to_si(number, unit), unit, source, UNITS[unit].dimension)


FARADAY = _constant("Faraday constant", "F", 96485.33212, "coulomb/mol", _CODATA)
COPPER_MOLAR_MASS = _constant("molar mass of copper", "M_Cu", 63.546, "g/mol", _WEIGHTS)
COPPER_SULFATE_MOLAR_MASS = _constant("molar mass of CuSO4·5H2O", "M_salt", 249.685, "g/mol", _WEIGHTS)
SULFURIC_ACID_MOLAR_MASS = _constant("molar mass of H2SO4", "M_H2SO4", 98.079, "g/mol", _WEIGHTS)
HYDROCHLORIC_ACID_MOLAR_MASS = _constant("molar mass of HCl", "M_HCl", 36.461, "g/mol", _WEIGHTS)
CHLORINE_MOLAR_MASS = _constant("molar mass of chlorine", "M_Cl", 35.453, "g/mol", _WEIGHTS)
HYDROGEN_CARBONATE_MOLAR_MASS = _constant("molar mass of NaHCO3", "M_NaHCO3", 84.007, "g/mol", _WEIGHTS)

METALS = Table(
    "metals",
    (
        TableField("molar_mass", "M", "molar mass", "g/mol"),
        TableField("density", "ρ", "density of the metal", "g/cm3"),
        TableField("charges", "z", "charges carried by one ion", ""),
    ),
    (
        TableRow("copper", "Copper from an acid bath (2+)", (63.546, 8.96, 2), f"{_WEIGHTS}; {_DENSITY}"),
        TableRow("nickel", "Nickel (2+)", (58.6934, 8.9, 2), f"{_WEIGHTS}; {_DENSITY}"),
        TableRow("zinc", "Zinc (2+)", (65.38, 7.134, 2), f"{_WEIGHTS}; {_DENSITY}"),
        TableRow("silver", "Silver (1+)", (107.8682, 10.5, 1), f"{_WEIGHTS}; {_DENSITY}"),
        TableRow(
            "chromium", "Chromium from chromic acid (6+)", (51.9961, 7.15, 6), f"{_WEIGHTS}; {_DENSITY}"
        ),
    ),
)

METAL = Choice("metal", "metal", "metal that is plated", METALS, "copper")
