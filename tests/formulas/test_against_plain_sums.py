"""Each formula against the same sum written anew on plain floats, over random inputs."""

import math
import random
from collections.abc import Callable
from typing import Any

import pytest
from scipy.stats import hypergeom

from generator.formulas import LIBRARY, Formula
from generator.formulas.evaluate import evaluate, holds
from tests.outputs.random_givens import as_page_data, random_givens

F = 96485.33212
CU, SALT, H2SO4, HCL, CL, BICARBONATE = 0.063546, 0.249685, 0.098079, 0.036461, 0.035453, 0.084007
FT2, MIL = 0.3048**2, 25.4e-6


def ring(d: float, wall: float) -> float:
    """Area of a ring from its two radii."""
    return math.pi * ((d / 2) ** 2 - (d / 2 - wall) ** 2)


def warm(g: Any) -> float:
    return float(g.resistivity * (1 + 0.00393 * (g.temperature - 293.15)))


def rinse_whole(wanted: float, n: int) -> float:
    for r in range(1, 10_000):
        if math.fsum(r**k for k in range(n + 1)) >= wanted:
            return r
    return math.nan


def next_drill(g: Any) -> float:
    wanted = g.finished + 2 * g.copper * g.throwing_power + g.play
    return min((s for s in g.drills if s >= wanted * (1 - 1e-9)), default=math.nan)


def myhre(w: float, t: float) -> float:
    """The polynomial term by term."""
    from generator.formulas.library.acid import _COEFFICIENTS

    return math.fsum(a * w**i * t**j for i, row in enumerate(_COEFFICIENTS) for j, a in enumerate(row))


PLAIN: dict[str, Callable[[Any], float]] = {
    "plating_area": lambda g: (
        2 * (g.length - g.masked) * g.width
        + math.fsum(
            h["count"] * (math.pi * h["drill"] * g.board_thickness - math.pi * h["drill"] ** 2 / 2)
            for h in g.holes
        )
    ),
    "plating_current": lambda g: g.density * g.area + g.density * g.contact_area,
    "plating_time": lambda g: (
        g.copper
        / (g.metal["molar_mass"] * g.density * g.efficiency / (g.metal["charges"] * F * g.metal["density"]))
    ),
    "thickness_from_charge": lambda g: (
        g.charge
        * g.efficiency
        / (g.metal["charges"] * F)
        * g.metal["molar_mass"]
        / g.metal["density"]
        / g.area
    ),
    "hole_thickness": lambda g: g.throwing_power * g.copper,
    "copper_used": lambda g: g.charge / F / g.metal["charges"] * g.metal["molar_mass"],
    "additive_by_charge": lambda g: g.charge * g.dose,
    "drill_size": next_drill,
    "aspect_ratio": lambda g: g.board_thickness / g.drill,
    "smallest_hole": lambda g: g.board_thickness / g.aspect_limit,
    "annular_ring": lambda g: g.pad / 2 - g.drill / 2 - g.misregistration,
    "foil_thickness": lambda g: g.foil / g.metal["density"],
    "track_width": lambda g: (
        (g.current / (g.track["k"] * g.rise**0.44)) ** (1 / 0.725) * MIL**2 / g.foil_height
    ),
    "make_up_solid": lambda g: g.bath_volume * g.target / g.purity,
    "make_up_liquid": lambda g: g.bath_volume * g.target / g.stock_strength / g.stock_density,
    "mixing_heat": lambda g: g.target / H2SO4 * g.heat_of_mixing / g.bath_density / g.specific_heat,
    "raise_strength": lambda g: g.bath_volume * (g.target - g.found) / (g.stock_concentration - g.target),
    "evaporation_top_up": lambda g: g.drop * g.surface,
    "copper_in_salt": lambda g: g.salt * CU / SALT,
    "copper_correction": lambda g: (g.copper_target - g.copper_found) * g.bath_volume * SALT / CU,
    "copper_dilution": lambda g: (
        g.bath_volume * (g.copper_found - g.copper_target) / g.copper_found if g.copper_found else math.nan
    ),
    "chloride_correction": lambda g: (
        (g.chloride_target - g.chloride_found) * g.bath_volume / CL * HCL / g.stock_strength / g.stock_density
    ),
    "dilution": lambda g: g.wanted_molarity / g.stock_molarity * g.wanted_volume,
    "dilution_by_mass": lambda g: g.wanted_mass * g.wanted_strength / g.stock_strength,
    "dilution_by_density": lambda g: (
        g.wanted_volume * (g.wanted_strength * g.wanted_density) / (g.stock_strength * g.stock_density)
    ),
    "label_to_molarity": lambda g: g.stock_density * g.stock_strength / g.molar_mass,
    "acid_density": lambda g: myhre(g.acid_strength, g.acid_temperature - 273.15),
    "titration": lambda g: (
        g.ratio * g.titrant_factor * g.titrant_molarity * g.titrant_volume / g.sample_volume
    ),
    "copper_by_edta": lambda g: (
        CU * g.titrant_factor * g.titrant_molarity * g.titrant_volume / g.sample_volume
    ),
    "acid_by_base": lambda g: (
        H2SO4 * g.titrant_factor * g.titrant_molarity * g.titrant_volume / 2 / g.sample_volume
    ),
    "drag_out": lambda g: g.parts * g.area * g.film,
    "rinse_ratio": lambda g: math.fsum(g.water_ratio**k for k in range(int(g.stages) + 1)),
    "rinse_water": lambda g: rinse_whole(g.carried_in / g.rinse_limit, int(g.stages)),
    "contamination_budget": lambda g: g.tolerated * g.bath_volume / (g.stranger * g.carried_volume),
    "barrel_resistance": lambda g: warm(g) * g.board_thickness / ring(g.drill, g.copper * g.throwing_power),
    "copper_from_resistance": lambda g: (
        g.drill / 2 - math.sqrt(g.drill**2 / 4 - warm(g) * g.board_thickness / g.resistance / math.pi)
    ),
    "coupon_thickness": lambda g: g.coupon_gain / g.coupon_area / g.metal["density"],
    "etch_rate": lambda g: g.coupon_loss / g.coupon_area / g.metal["density"] / g.etch_time,
    "holes_to_sample": lambda g: float(
        hypergeom.pmf(0, int(g.holes_total), int(g.holes_bad), int(g.holes_tested))
    ),
    "registration_error": lambda g: math.hypot(
        g.mark_1_along + g.reach * (g.mark_2_along - g.mark_1_along) / g.mark_distance,
        g.mark_1_across + g.reach * (g.mark_2_across - g.mark_1_across) / g.mark_distance,
    ),
    "board_stretch": lambda g: g.mark_2_along / g.mark_distance - g.mark_1_along / g.mark_distance,
    "board_rotation": lambda g: g.mark_2_across / g.mark_distance - g.mark_1_across / g.mark_distance,
    "anode_ratio": lambda g: g.anode_area / g.area,
    "supply_headroom": lambda g: 1 - g.current / g.supply_most,
    "heater_warm_up": lambda g: (
        g.bath_volume
        * g.bath_density
        * g.specific_heat
        * (g.bath_temperature - g.start_temperature)
        / g.heater_power
        / g.heat_kept
    ),
    "container_runs": lambda g: math.floor(g.container * g.full_at / g.a_board * (1 + 1e-9)),
    "neutralising_estimate": lambda g: g.spill_volume * g.spill_acid / H2SO4 * 2 * BICARBONATE * g.excess,
    "anodise_time": lambda g: 720 * 60 * (g.oxide / MIL) / (g.density * FT2),
    "anodise_charge": lambda g: 720 * 60 * (g.oxide / MIL) * (g.area / FT2),
    "letter_height": lambda g: g.distance / 300,
    "signal_height": lambda g: g.distance / 150,
    "session_clock": lambda g: math.fsum([g.start, *(step["takes"] for step in g.steps)]),
    "latest_start": lambda g: g.until - (g.run_time + g.pack_up),
    "stagger": lambda g: max(g.hands_time, g.shared_time / g.room_for),
}
# Differences of nearly equal numbers, and polynomials with terms of both signs, keep fewer digits.
LOOSER = {
    "acid_density": 1e-9,
    "barrel_resistance": 1e-8,
    "copper_from_resistance": 1e-6,
    "holes_to_sample": 1e-9,
    "track_width": 1e-11,
}


class Named:
    """Values by name, so that a plain sum reads like one."""

    def __init__(self, values: dict[str, Any]) -> None:
        self.__dict__.update(values)


def test_every_formula_has_its_plain_sum() -> None:
    assert sorted(PLAIN) == sorted(formula.name for formula in LIBRARY)


@pytest.mark.parametrize("formula", LIBRARY, ids=lambda formula: formula.name)
def test_formula_equals_plain_sum(formula: Formula) -> None:
    dice = random.Random(formula.name)
    compared = 0
    for _ in range(2000):
        if compared == (30 if formula.name == "rinse_water" else 120):
            break
        givens = random_givens(formula, dice)
        if not all(holds(tape, givens) for tape in formula.requirement_tapes):
            continue
        found = evaluate(formula.tape, givens)
        wanted = PLAIN[formula.name](Named(as_page_data(givens)))
        if math.isnan(wanted):
            assert not math.isfinite(found)
            continue
        scale = max((abs(value) for value in givens.quantities.values()), default=0.0)
        rel = LOOSER.get(formula.name, 1e-12)
        assert found == pytest.approx(wanted, rel=rel, abs=rel * 1e-3 * scale), givens
        compared += 1
    assert compared >= 20
