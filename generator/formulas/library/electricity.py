"""Inputs of current, charge, time and temperature: one name, one symbol, one meaning."""

from generator.formulas.inputs import Input

DENSITY = Input(
    "density",
    "j",
    "current density, current for each area",
    "A/dm2",
    ("mA/cm2", "A/m2", "A/ft2"),
    "1 to 3 A/dm2",
    "0.001 to 200 A/dm2",
    "more current burns any bath",
)
CONTACT_AREA = Input(
    "contact_area",
    "A_contact",
    "bare rack metal and coupon in the bath",
    "dm2",
    ("cm2", "m2", "ft2"),
    "0 to 1 dm2",
    "0 to 1000 dm2",
    "an area is not below nothing",
    "0 dm2",
)
EFFICIENCY = Input(
    "efficiency",
    "η",
    "share of the current that lays down metal",
    "%",
    (),
    "90 to 100 %",
    "1 to 100 %",
    "no more metal is laid down than the charge carries",
    "97 %",
)
TEMPERATURE = Input(
    "temperature",
    "θ",
    "temperature of the part when it is measured",
    "degC",
    ("degF", "K"),
    "15 to 30 degC",
    "-60 to 250 degC",
    "the straight line for copper ends there",
    "20 degC",
)
RESISTIVITY = Input(
    "resistivity",
    "ρ_20",
    "resistivity of the metal at 20 °C",
    "uohm cm",
    ("ohm m", "ohm mm2/m"),
    "1.7 to 2 uohm cm",
    "1 to 1000 uohm cm",
    "no plated metal conducts better",
    "1.7241 uohm cm",
)
CHARGE = Input(
    "charge",
    "Q",
    "charge that has flowed",
    "A h",
    ("A min", "coulomb"),
    "0.5 to 500 A h",
    "0 to 1000000 A h",
    "charge is counted upwards",
)
CURRENT = Input(
    "current",
    "I",
    "current",
    "A",
    ("mA",),
    "0.5 to 20 A",
    "0 to 10000 A",
    "current is set upwards from nothing",
)
