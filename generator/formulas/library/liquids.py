"""Inputs of baths, stock solutions, titrations and rinses: one name, one symbol, one meaning."""

from generator.formulas.inputs import Input

_VOLUME = ("mL", "m3", "gal")
_LIQUID = "no liquid of this line is as light or as heavy"

BATH_VOLUME = Input(
    "bath_volume",
    "V",
    "volume of the bath",
    "L",
    _VOLUME,
    "1 to 200 L",
    "0.001 to 100000 L",
    "a bath holds liquid",
)
TARGET = Input(
    "target",
    "c_target",
    "concentration wanted in the bath",
    "g/L",
    ("mg/L", "kg/m3", "oz/gal"),
    "1 to 300 g/L",
    "0 to 2000 g/L",
    "no bath holds more",
)
FOUND = Input(
    "found",
    "c_found",
    "concentration found in the bath",
    "g/L",
    ("mg/L", "kg/m3", "oz/gal"),
    "1 to 300 g/L",
    "0 to 2000 g/L",
    "no bath holds more",
)
STOCK_CONCENTRATION = Input(
    "stock_concentration",
    "c_stock",
    "concentration of the stock that is added",
    "g/L",
    ("kg/L", "oz/gal"),
    "10 to 1800 g/L",
    "0.001 to 5000 g/L",
    "no stock holds more",
)
PURITY = Input(
    "purity",
    "p",
    "share of the solid that is the substance itself",
    "% w/w",
    ("%",),
    "95 to 100 % w/w",
    "1 to 100 % w/w",
    "no solid is purer than pure",
    "100 % w/w",
)
STOCK_STRENGTH = Input(
    "stock_strength",
    "w_stock",
    "strength of the stock by mass, as on its label",
    "% w/w",
    ("%",),
    "1 to 98 % w/w",
    "0.01 to 100 % w/w",
    "no solution is stronger than the substance itself",
)
STOCK_DENSITY = Input(
    "stock_density",
    "ρ_stock",
    "density of the stock, as on its label",
    "kg/L",
    ("g/cm3", "g/mL", "kg/m3"),
    "0.8 to 1.9 kg/L",
    "0.5 to 4 kg/L",
    _LIQUID,
)
WANTED_STRENGTH = Input(
    "wanted_strength",
    "w",
    "strength wanted by mass",
    "% w/w",
    ("%",),
    "1 to 98 % w/w",
    "0.001 to 100 % w/w",
    "no solution is stronger than the substance itself",
)
WANTED_DENSITY = Input(
    "wanted_density",
    "ρ",
    "density of the solution wanted, from a table",
    "kg/L",
    ("g/cm3", "g/mL", "kg/m3"),
    "0.8 to 1.9 kg/L",
    "0.5 to 4 kg/L",
    _LIQUID,
)
WANTED_MASS = Input(
    "wanted_mass",
    "m",
    "mass of solution wanted",
    "g",
    ("kg", "mg"),
    "1 to 10000 g",
    "0.001 to 1000000 g",
    _LIQUID,
)
WANTED_VOLUME = Input(
    "wanted_volume",
    "V_wanted",
    "volume of solution wanted",
    "L",
    _VOLUME,
    "0.01 to 200 L",
    "0.000001 to 100000 L",
    "a solution has a volume",
)
STOCK_MOLARITY = Input(
    "stock_molarity",
    "C_stock",
    "amount in a litre of the stock",
    "mol/L",
    ("mmol/L",),
    "0.01 to 18 mol/L",
    "0.000001 to 60 mol/L",
    "no stock holds more",
)
WANTED_MOLARITY = Input(
    "wanted_molarity",
    "C",
    "amount in a litre of the solution wanted",
    "mol/L",
    ("mmol/L",),
    "0.001 to 18 mol/L",
    "0.000001 to 60 mol/L",
    "no solution holds more",
)
MOLAR_MASS = Input(
    "molar_mass",
    "M",
    "molar mass of the substance",
    "g/mol",
    ("kg/mol",),
    "10 to 500 g/mol",
    "1 to 10000 g/mol",
    "no substance of the bench is lighter or heavier",
)
HEAT_OF_MIXING = Input(
    "heat_of_mixing",
    "ΔH",
    "heat that a mole of acid gives to much water",
    "kJ/mol",
    ("J/mol",),
    "50 to 100 kJ/mol",
    "0 to 500 kJ/mol",
    "no acid gives more",
    "75 kJ/mol",
)
BATH_DENSITY = Input(
    "bath_density",
    "ρ_bath",
    "density of the bath",
    "kg/L",
    ("g/cm3", "g/mL", "kg/m3"),
    "1 to 1.3 kg/L",
    "0.5 to 4 kg/L",
    _LIQUID,
    "1 kg/L",
)
SPECIFIC_HEAT = Input(
    "specific_heat",
    "c_p",
    "heat that warms a gram of the bath by one degree",
    "J/(g K)",
    ("J/(kg K)",),
    "3 to 4.2 J/(g K)",
    "1 to 5 J/(g K)",
    "water takes 4.2, and no bath much more",
    "4.18 J/(g K)",
)
SAMPLE_VOLUME = Input(
    "sample_volume",
    "V_sample",
    "volume of the sample",
    "mL",
    ("L", "uL"),
    "0.5 to 50 mL",
    "0.001 to 10000 mL",
    "a sample has a volume",
)
TITRANT_VOLUME = Input(
    "titrant_volume",
    "V_titrant",
    "volume of titrant used",
    "mL",
    ("L", "uL"),
    "1 to 50 mL",
    "0 to 10000 mL",
    "a burette does not give less than nothing",
)
TITRANT_MOLARITY = Input(
    "titrant_molarity",
    "C_titrant",
    "strength of the titrant, as on its label",
    "mol/L",
    ("mmol/L",),
    "0.01 to 1 mol/L",
    "0.00001 to 20 mol/L",
    "no titrant is stronger",
)
TITRANT_FACTOR = Input(
    "titrant_factor",
    "f",
    "true strength of the titrant over that on its label",
    "",
    (),
    "0.95 to 1.05",
    "0.5 to 1.5",
    "a titrant that is so far off is made anew",
    "1",
)
SURFACE = Input(
    "surface",
    "A_surface",
    "open surface of the bath",
    "dm2",
    ("cm2", "m2"),
    "1 to 100 dm2",
    "0.01 to 100000 dm2",
    "a bath has a surface",
)
DROP = Input(
    "drop",
    "h_drop",
    "how far the level has fallen",
    "mm",
    ("cm",),
    "1 to 30 mm",
    "0 to 2000 mm",
    "a level that has risen is told to the bath keeper",
)
