"""Every formula again as one plain sum on floats in coherent SI, with constants and unit factors of its own.

Written out by hand in the order in which handbooks write the sum, so that the last bits can be compared.
"""

import math
from collections.abc import Callable
from types import SimpleNamespace
from typing import Any

# CODATA 2018 (exact since the SI of 2019); IUPAC standard atomic weights, g/mol over 1000.
F = 96485.33212
CU, SALT, H2SO4, HCL, CL, BICARBONATE = (
    63.546 / 1000, 249.685 / 1000, 98.079 / 1000, 36.461 / 1000, 35.453 / 1000, 84.007 / 1000,
)  # fmt: skip
# IEC 60028: resistance of annealed copper grows by 0.00393 of itself a kelvin, from 20 °C.
WARMS, ROOM = 0.00393, 293.15
MIL, FT2 = 25.4e-6, 0.3048**2
RULE_OF_720 = 720 * (60 / (FT2 * MIL))

# NIST SP 811 (2008), appendix B: exact factors to SI as a numerator and a denominator.
SI: dict[str, tuple[float, float]] = {
    "": (1, 1), "boards": (1, 1), "%": (1, 100), "% w/w": (1, 100), "mm/m": (1, 1000),
    "m": (1, 1), "dm": (1, 10), "cm": (1, 100), "mm": (1, 1000), "um": (1, 1e6),
    "in": (127, 5000), "ft": (381, 1250), "mil": (127, 5e6),
    "m2": (1, 1), "dm2": (1, 100), "cm2": (1, 1e4), "mm2": (1, 1e6), "in2": (16129, 25e6),
    "ft2": (145161, 1562500), "m3": (1, 1), "L": (1, 1000), "mL": (1, 1e6), "uL": (1, 1e9),
    "gal": (473176473, 125e9), "kg": (1, 1), "g": (1, 1000), "mg": (1, 1e6),
    "lb": (45359237, 1e8), "oz": (45359237, 16e8), "s": (1, 1), "min": (60, 1), "h": (3600, 1),
    "K": (1, 1), "degC": (1, 1), "degF": (5, 9), "delta degC": (1, 1), "delta degF": (5, 9),
    "A": (1, 1), "mA": (1, 1000), "kA": (1000, 1), "coulomb": (1, 1), "A h": (3600, 1), "A min": (60, 1),
    "A/m2": (1, 1), "A/dm2": (100, 1), "mA/cm2": (10, 1), "A/ft2": (1562500, 145161),
    "ohm": (1, 1), "mohm": (1, 1000), "uohm": (1, 1e6), "ohm m": (1, 1), "uohm cm": (1, 1e8),
    "ohm mm2/m": (1, 1e6), "W": (1, 1), "kW": (1000, 1), "J/mol": (1, 1), "kJ/mol": (1000, 1),
    "J/(kg K)": (1, 1), "J/(g K)": (1000, 1), "g/mol": (1, 1000), "kg/mol": (1, 1),
    "mol/L": (1000, 1), "mmol/L": (1, 1), "g/L": (1, 1), "mg/L": (1, 1000), "kg/m3": (1, 1),
    "kg/L": (1000, 1), "g/cm3": (1000, 1), "g/mL": (1000, 1), "oz/gal": (368175625, 49161192),
    "g/m2": (1, 1000), "oz/ft2": (45359237, 148644864), "mL/(A h)": (1, 36e8),
    "mL/dm2": (1, 1e4), "L/m2": (1, 1000), "mL/m2": (1, 1e6), "um/min": (1, 6e7), "um/h": (1, 36e8),
}  # fmt: skip
ZERO = {"degC": 273.15, "degF": 459.67}


def in_si(number: float, unit: str) -> float:
    """A number in a unit as its SI value."""
    numerator, denominator = SI[unit]
    return (number + ZERO.get(unit, 0.0)) * numerator / denominator


def out_of_si(value: float, unit: str) -> float:
    """An SI value as a number in a unit."""
    numerator, denominator = SI[unit]
    return value * denominator / numerator - ZERO.get(unit, 0.0)


# Symbol by symbol as in the table of constants: g/mol, g/cm3, charges of one ion.
METALS = {
    "copper": (63.546, 8.96, 2), "nickel": (58.6934, 8.9, 2), "zinc": (65.38, 7.134, 2),
    "silver": (107.8682, 10.5, 1), "chromium": (51.9961, 7.15, 6),
}  # fmt: skip
RECORDS: dict[str, Any] = {
    **{m: SimpleNamespace(M=a / 1000, rho=b * 1000, z=c) for m, (a, b, c) in METALS.items()},
    "outside": 0.048,
    "inside": 0.024,
}


def plating_area(g: Any) -> float:
    openings = walls = 0.0
    for hole in g.holes:
        openings += hole.count * math.pi * (hole.drill * hole.drill) / 4
        walls += hole.count * math.pi * hole.drill * g.board_thickness
    faces = 2 * (g.length - g.masked) * g.width
    return float(faces - 2 * openings + walls)


def drill_size(g: Any) -> float:
    wanted = g.finished + 2 * g.copper * g.throwing_power + g.play
    return min((size for size in g.drills if size >= wanted * (1 - 1e-9)), default=math.nan)


def acid_density(g: Any) -> float:
    """Myhre, Nielsen and Saastad, J. Chem. Eng. Data 43 (1998) 617, equation 2, by Horner's scheme."""
    from generator.formulas.library.acid import _COEFFICIENTS

    warmth = g.acid_temperature - 273.15
    value = 0.0
    for row in reversed(_COEFFICIENTS):
        term = 0.0
        for coefficient in reversed(row):
            term = term * warmth + coefficient
        value = value * g.acid_strength + term
    return value


def rinse_ratio(g: Any) -> float:
    power = 1.0
    for _ in range(int(g.stages) + 1):
        power *= g.water_ratio
    return float((power - 1) / (g.water_ratio - 1))


def rinse_water(g: Any) -> float:
    wanted = g.carried_in / g.rinse_limit
    stages = int(g.stages)
    for ratio in range(1, 10_000):
        if (ratio ** (stages + 1) - 1) // (ratio - 1) >= wanted if ratio > 1 else stages + 1 >= wanted:
            return ratio
    return math.nan


def copper_from_resistance(g: Any) -> float:
    warm = g.resistivity * (1 + WARMS * (g.temperature - ROOM))
    under = g.drill * g.drill - 4 * warm * g.board_thickness / (math.pi * g.resistance)
    return (g.drill - math.sqrt(under)) / 2 if under >= 0 else math.nan


def barrel_resistance(g: Any) -> float:
    wall = g.copper * g.throwing_power
    warm = g.resistivity * (1 + WARMS * (g.temperature - ROOM))
    return float(warm * g.board_thickness / (math.pi * (g.drill - wall) * wall))


def holes_to_sample(g: Any) -> float:
    missed = 1.0
    for drawn in range(int(g.holes_tested)):
        missed *= (g.holes_total - g.holes_bad - drawn) / (g.holes_total - drawn)
    return missed if g.holes_tested + g.holes_bad <= g.holes_total else 0.0


def registration_error(g: Any) -> float:
    along = g.mark_1_along + (g.mark_2_along - g.mark_1_along) / g.mark_distance * g.reach
    across = g.mark_1_across + (g.mark_2_across - g.mark_1_across) / g.mark_distance * g.reach
    return math.sqrt(along * along + across * across)


def track_width(g: Any) -> float:
    """IPC-2221: I = k dT^0.44 A^0.725, A in square mils."""
    return float((g.current / (g.track * g.rise**0.44)) ** (1 / 0.725) * (MIL * MIL) / g.foil_height)


def heater_warm_up(g: Any) -> float:
    heat = g.bath_volume * g.bath_density * g.specific_heat * (g.bath_temperature - g.start_temperature)
    return float(heat / (g.heater_power * g.heat_kept))


def session_clock(g: Any) -> float:
    taken = 0.0
    for step in g.steps:
        taken += step.takes
    return float(g.start + taken)


def chloride_correction(g: Any) -> float:
    chloride = (g.chloride_target - g.chloride_found) * g.bath_volume
    return float(chloride * HCL / (CL * g.stock_strength * g.stock_density))


SUMS: dict[str, Callable[[Any], float]] = {
    "plating_area": plating_area,
    "plating_current": lambda g: g.density * (g.area + g.contact_area),
    "plating_time": lambda g: (
        g.copper * g.metal.rho * g.metal.z * F / (g.metal.M * g.density * g.efficiency)
    ),
    "thickness_from_charge": lambda g: (
        g.metal.M * g.charge * g.efficiency / (g.metal.z * F * g.metal.rho * g.area)
    ),
    "hole_thickness": lambda g: g.copper * g.throwing_power,
    "copper_used": lambda g: g.metal.M * g.charge / (g.metal.z * F),
    "additive_by_charge": lambda g: g.dose * g.charge,
    "drill_size": drill_size,
    "aspect_ratio": lambda g: g.board_thickness / g.drill,
    "smallest_hole": lambda g: g.board_thickness / g.aspect_limit,
    "annular_ring": lambda g: (g.pad - g.drill) / 2 - g.misregistration,
    "foil_thickness": lambda g: g.foil / g.metal.rho,
    "track_width": track_width,
    "make_up_solid": lambda g: g.target * g.bath_volume / g.purity,
    "make_up_liquid": lambda g: g.target * g.bath_volume / (g.stock_strength * g.stock_density),
    "mixing_heat": lambda g: g.target * g.heat_of_mixing / (H2SO4 * g.bath_density * g.specific_heat),
    "raise_strength": lambda g: g.bath_volume * (g.target - g.found) / (g.stock_concentration - g.target),
    "evaporation_top_up": lambda g: g.surface * g.drop,
    "copper_in_salt": lambda g: g.salt * CU / SALT,
    "copper_correction": lambda g: (g.copper_target - g.copper_found) * g.bath_volume * SALT / CU,
    "copper_dilution": lambda g: g.bath_volume * (1 - g.copper_target / g.copper_found),
    "chloride_correction": chloride_correction,
    "dilution": lambda g: g.wanted_molarity * g.wanted_volume / g.stock_molarity,
    "dilution_by_mass": lambda g: g.wanted_strength * g.wanted_mass / g.stock_strength,
    "dilution_by_density": lambda g: (
        g.wanted_strength * g.wanted_density * g.wanted_volume / (g.stock_strength * g.stock_density)
    ),
    "label_to_molarity": lambda g: g.stock_strength * g.stock_density / g.molar_mass,
    "acid_density": acid_density,
    "titration": lambda g: (
        g.ratio * g.titrant_volume * g.titrant_molarity * g.titrant_factor / g.sample_volume
    ),
    "copper_by_edta": lambda g: (
        CU * g.titrant_volume * g.titrant_molarity * g.titrant_factor / g.sample_volume
    ),
    "acid_by_base": lambda g: (
        H2SO4 * (g.titrant_volume * g.titrant_molarity * g.titrant_factor) / (2 * g.sample_volume)
    ),
    "drag_out": lambda g: g.film * g.area * g.parts,
    "rinse_ratio": rinse_ratio,
    "rinse_water": rinse_water,
    "contamination_budget": lambda g: g.tolerated * g.bath_volume / (g.carried_volume * g.stranger),
    "barrel_resistance": barrel_resistance,
    "copper_from_resistance": copper_from_resistance,
    "coupon_thickness": lambda g: g.coupon_gain / (g.metal.rho * g.coupon_area),
    "etch_rate": lambda g: g.coupon_loss / (g.metal.rho * g.coupon_area * g.etch_time),
    "holes_to_sample": holes_to_sample,
    "registration_error": registration_error,
    "board_stretch": lambda g: (g.mark_2_along - g.mark_1_along) / g.mark_distance,
    "board_rotation": lambda g: (g.mark_2_across - g.mark_1_across) / g.mark_distance,
    "anode_ratio": lambda g: g.anode_area / g.area,
    "supply_headroom": lambda g: (g.supply_most - g.current) / g.supply_most,
    "heater_warm_up": heater_warm_up,
    "container_runs": lambda g: math.floor(g.container * g.full_at / g.a_board * (1 + 1e-9)),
    "neutralising_estimate": lambda g: (
        2 * (g.spill_volume * g.spill_acid) * BICARBONATE * g.excess / H2SO4
    ),
    "anodise_time": lambda g: RULE_OF_720 * g.oxide / g.density,
    "anodise_charge": lambda g: RULE_OF_720 * g.oxide * g.area,
    "letter_height": lambda g: g.distance / 300,
    "signal_height": lambda g: g.distance / 150,
    "session_clock": session_clock,
    "latest_start": lambda g: g.until - g.pack_up - g.run_time,
    "stagger": lambda g: max(g.shared_time / g.room_for, g.hands_time),
}
# Where a power, an exponential or a logarithm is involved.
TRANSCENDENTAL = ("track_width",)
