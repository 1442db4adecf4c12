"""Values published outside the project, each with its source, and how our formulas come to them.

Evidence: "read" in the named source, "second" on a page that quotes it, "computed" from named package values.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import partial
from typing import Any

from generator.formulas import find_formula
from generator.formulas.evaluate import Givens, evaluate
from generator.formulas.inputs import Choice, Input
from generator.formulas.inverse import solve_for
from generator.units import Quantity
from generator.units.quantity import from_si


@dataclass(frozen=True)
class Published:
    """One published value: how it is worked out here, what is expected, and to which part of itself."""

    id: str
    work_out: Callable[[], float]
    expect: float
    rel: float
    source: str
    evidence: str


def of(name: str, unit: str = "", **given: Any) -> float:
    """The answer of a formula in a unit."""
    formula = find_formula(name)
    return formula.evaluate(given).to(unit or formula.answer.unit).number


def solved(name: str, wanted: str, answer: str, unit: str, **given: Any) -> float:
    """An input of a formula from its answer."""
    return solve_for(find_formula(name), wanted).evaluate(answer, given).to(unit).number


def with_metal(name: str, unit: str, metal: Mapping[str, float], **given: Any) -> float:
    """The answer for a metal with the constants that the source uses: g/mol, g/cm3, charges."""
    formula = find_formula(name)
    quantities = {
        each.name: each.read(given.get(each.name, each.default)).si
        for each in formula.inputs
        if isinstance(each, Input)
    }
    record = {
        "molar_mass": metal["M"] / 1000,
        "density": metal.get("rho", 1.0) * 1000,
        "charges": metal["z"],
    }
    choices = {each.name: record for each in formula.inputs if isinstance(each, Choice)}
    return from_si(evaluate(formula.tape, Givens(quantities, {}, {}, choices)), unit)


OPENSTAX = "OpenStax Chemistry 2e"
ELECTROLYSIS = f"{OPENSTAX}, section 17.7 Electrolysis (module m68827)"
MOLARITY = f"{OPENSTAX}, section 3.3 Molarity (module m68703)"
UNITS_OF_C = f"{OPENSTAX}, section 3.4 Other units of concentration (module m68704)"
STOCKS = f"{OPENSTAX}, appendix F1 (module m68864)"
ANALYSIS = f"{OPENSTAX}, section 4.5 Quantitative analysis (module m68716)"
PACKAGES = "scipy 1.17.1 Faraday constant; molmass 2026.1.8; mendeleev 1.3.0 densities"
COPPER_NOTE = "instrument maker's application notes G10 and E11 (2019), copper in plating solutions"
WESTRE = "Westre, How to Apply the 720 Rule (finishingandcoating.com), table 1"
Z535 = "ANSI Z535.2, clause 9.2.3, table as quoted in a public sign catalogue"
RING = "R = rho L / (pi/4 (D^2 - (D - 2t)^2)), closed form, with 1.7241e-8 ohm m and 0.00393 1/K"
IPC = "IPC-2221 rule as quoted by two public calculators; numbers computed"
MYHRE = "chempy 0.10.2 after Myhre 1998, doi 10.1021/je980013g"


def rate(metal: str) -> float:
    return solved("plating_time", "copper", "1 min", "um", metal=metal, density="1 A/dm2", efficiency="100 %")


def barrel(drill: str, copper: str, temperature: str) -> float:
    return of(
        "barrel_resistance",
        board_thickness="1.6 mm",
        drill=drill,
        copper=copper,
        throwing_power="100 %",
        temperature=temperature,
    )


def label(strength: str, density: str, molar_mass: str) -> float:
    return of("label_to_molarity", stock_strength=strength, stock_density=density, molar_mass=molar_mass)


def acid(strength: int) -> float:
    return of("acid_density", "kg/m3", acid_strength=f"{strength} % w/w", acid_temperature="20 degC")


def galvanised(unit: str) -> float:
    """5.5 m by 3.0 m with 0.100 mm of zinc: mass by its volume, time at 25.5 A."""
    if unit == "kg":
        return Quantity(5.5 * 3.0 * 0.0001 * 7140, "kg").number
    density = f"{25.5 / 16.5:.15g} A/m2"
    zinc = {"M": 65.38, "rho": 7.14, "z": 2.0}
    return with_metal("plating_time", "h", zinc, copper="0.100 mm", density=density, efficiency="100 %")


def track(current: str, rise: str, track: str) -> float:
    """Section in square mil: width for copper of one mil."""
    return of("track_width", "mil", current=current, rise=rise, track=track, foil_height="1 mil")


def track_width(current: str, rise: str) -> float:
    return of("track_width", "mil", current=current, rise=rise, foil_height="1.378 mil")


def rinse_water_exact(stages: int) -> float:
    """The flow ratio at which the exact series gives 270000 over 40 mg/L, found by halving."""
    low, high = 1.5, 10_000.0
    for _ in range(200):
        middle = (low + high) / 2
        enough = of("rinse_ratio", water_ratio=f"{middle:.15f}", stages=stages) >= 6750
        low, high = (low, middle) if enough else (middle, high)
    return high


SILVER, ALUMINIUM, ZINC = {"M": 107.9, "z": 1.0}, {"M": 26.98, "z": 3.0}, {"M": 65.38, "rho": 7.14, "z": 2.0}

PLATING = (
    Published(
        "faraday_ag_mass",
        lambda: with_metal("copper_used", "g", SILVER, charge=f"{10.23 * 3600:.6f} coulomb"),
        41.19,
        2e-4,
        ELECTROLYSIS,
        "read",
    ),
    Published(
        "faraday_al_mass",
        lambda: with_metal("copper_used", "g", ALUMINIUM, charge=f"{25.0 * 900:.6f} coulomb"),
        2.10,
        2.5e-3,
        ELECTROLYSIS,
        "read",
    ),
    Published("faraday_zn_galvanise mass", lambda: galvanised("kg"), 11.8, 2e-3, ELECTROLYSIS, "read"),
    Published("faraday_zn_galvanise time", lambda: galvanised("h"), 379, 1e-3, ELECTROLYSIS, "read"),
    Published(
        "faraday_zn_area",
        # Area stands once in the formula: thickness times area is the same for any area.
        lambda: with_metal(
            "thickness_from_charge",
            "um",
            ZINC,
            charge=f"{2.599 * 3600:.6f} coulomb",
            area="395.35 cm2",
            efficiency="100 %",
        ),
        11.23,
        1e-5,
        ELECTROLYSIS,
        "computed",
    ),
    *(
        Published(f"rate_{short} um_per_min", partial(rate, metal), um, 1e-5, PACKAGES, "computed")
        for short, metal, um in (
            ("cu", "copper", 0.220516),
            ("ni", "nickel", 0.20505),
            ("zn", "zinc", 0.284952),
            ("ag", "silver", 0.638843),
            ("cr", "chromium", 0.075371),
        )
    ),
    *(
        Published(
            f"rate_{short} g_per_Ah",
            partial(of, "copper_used", "g", charge="1 A h", metal=metal),
            grams,
            1e-5,
            PACKAGES,
            "computed",
        )
        for short, metal, grams in (
            ("cu", "copper", 1.18549),
            ("ni", "nickel", 1.09497),
            ("zn", "zinc", 1.21971),
            ("ag", "silver", 4.02471),
            ("cr", "chromium", 0.32334),
        )
    ),
    Published(
        "cu_1oz g_m2",
        lambda: Quantity(1, "oz/ft2").to("g/m2").number,
        305.1517,
        1e-6,
        "IPC-4562 as quoted on a public page",
        "second",
    ),
    Published(
        "cu_1oz um_at_8.96",
        lambda: of("foil_thickness", "um", foil="1 oz/ft2"),
        34.0571,
        1e-5,
        "IPC-4562 as quoted on a public page",
        "second",
    ),
)
LIQUIDS = (
    Published(
        "dil_1",
        lambda: solved(
            "dilution",
            "wanted_molarity",
            "0.850 L",
            "mol/L",
            stock_molarity="5.00 mol/L",
            wanted_volume="1.80 L",
        ),
        2.36,
        2e-3,
        MOLARITY,
        "read",
    ),
    Published(
        "dil_2",
        lambda: solved(
            "dilution",
            "wanted_molarity",
            "25.0 mL",
            "mol/L",
            stock_molarity="2.04 mol/L",
            wanted_volume="500.0 mL",
        ),
        0.102,
        2e-3,
        MOLARITY,
        "read",
    ),
    Published(
        "dil_4",
        lambda: solved(
            "dilution",
            "wanted_volume",
            "0.250 L",
            "L",
            stock_molarity="1.88 mol/L",
            wanted_molarity="0.125 mol/L",
        ),
        3.76,
        2e-3,
        MOLARITY,
        "read",
    ),
    Published(
        "dil_5",
        lambda: of(
            "dilution", wanted_molarity="0.100 mol/L", wanted_volume="5.00 L", stock_molarity="1.59 mol/L"
        ),
        0.314,
        2e-3,
        MOLARITY,
        "read",
    ),
    Published(
        "dil_mass",
        lambda: of(
            "dilution_by_mass",
            wanted_strength="10.0 % w/w",
            wanted_mass="400.0 g",
            stock_strength="68.0 % w/w",
        ),
        58.8,
        1e-3,
        UNITS_OF_C,
        "read",
    ),
    Published(
        "naoh_makeup",
        # 10.0 % by mass at 1.109 g/mL are 110.9 g/L.
        lambda: of("make_up_solid", target="110.9 g/L", bath_volume="1.00 L", purity="97.0 % w/w"),
        114.33,
        1e-4,
        UNITS_OF_C,
        "read",
    ),
    Published(
        "stock_acetic_acid",
        lambda: label("99.5 % w/w", "1.05 g/mL", "60.05 g/mol"),
        17.4,
        5e-3,
        STOCKS,
        "read",
    ),
    Published(
        "stock_aqueous_ammonia",
        lambda: label("28 % w/w", "0.90 g/mL", "17.03 g/mol"),
        14.8,
        5e-3,
        STOCKS,
        "read",
    ),
    Published(
        "stock_nitric_acid", lambda: label("71 % w/w", "1.42 g/mL", "63.01 g/mol"), 16.0, 5e-3, STOCKS, "read"
    ),
    Published(
        "stock_phosphoric_acid",
        lambda: label("85 % w/w", "1.70 g/mL", "97.99 g/mol"),
        14.7,
        5e-3,
        STOCKS,
        "read",
    ),
    Published(
        "stock_sulfuric_acid",
        lambda: label("96 % w/w", "1.84 g/mL", "98.08 g/mol"),
        18.0,
        5e-3,
        STOCKS,
        "read",
    ),
    Published(
        "titr_hcl",
        lambda: of(
            "titration", titrant_volume="35.23 mL", titrant_molarity="0.250 mol/L", sample_volume="50.0 mL"
        ),
        0.176,
        3e-3,
        ANALYSIS,
        "read",
    ),
    Published(
        "titr_h2so4_naoh",
        lambda: of(
            "titration",
            titrant_volume="1.7 mL",
            titrant_molarity="0.0811 mol/L",
            sample_volume="20.0 mL",
            ratio="0.5",
        ),
        0.0034,
        1.5e-2,
        ANALYSIS,
        "read",
    ),
    Published(
        "titr_h2so4_naoh as g/L",
        lambda: (
            of(
                "acid_by_base",
                titrant_volume="1.7 mL",
                titrant_molarity="0.0811 mol/L",
                sample_volume="20.0 mL",
            )
            / 98.079
        ),
        0.0034,
        1.5e-2,
        ANALYSIS,
        "read",
    ),
    Published(
        "titr_cu_edta",
        lambda: of(
            "copper_by_edta", titrant_volume="7.623 mL", titrant_molarity="0.100 mol/L", sample_volume="5 mL"
        ),
        9.688,
        1e-4,
        COPPER_NOTE,
        "second",
    ),
    Published(
        "titr_cu_edta as reported",
        lambda: of(
            "copper_by_edta",
            titrant_volume="7.623 mL",
            titrant_molarity="0.100 mol/L",
            titrant_factor="0.9949",
            sample_volume="5 mL",
        ),
        9.639,
        2e-4,
        COPPER_NOTE,
        "second",
    ),
    Published(
        "titr_cu_thiosulfate",
        lambda: of(
            "copper_by_edta", titrant_volume="9.623 mL", titrant_molarity="0.100 mol/L", sample_volume="1 mL"
        ),
        61.15,
        1e-4,
        COPPER_NOTE,
        "second",
    ),
    Published(
        "cu_per_salt",
        lambda: of("copper_in_salt", salt="75 g/L"),
        19.088,
        1e-5,
        "molmass 2026.1.8",
        "computed",
    ),
    *(
        Published(f"h2so4_rho_{w}", partial(acid, w), kg, 1e-5, MYHRE, "computed")
        for w, kg in ((10, 1065.86), (30, 1218.91), (40, 1303.24), (60, 1499.61), (70, 1612.4), (90, 1817.37))
    ),
    *(
        Published(
            f"h2so4_rho_{w} by another model",
            partial(acid, w),
            kg,
            2.6e-3,
            "thermo 0.6.1 Laliberte 2009, valid to 78 %",
            "computed",
        )
        for w, kg in ((10, 1066.95), (30, 1219.23), (40, 1304.34), (60, 1497.58), (70, 1608.41))
    ),
    *(
        Published(
            f"rinse_watts n{n}",
            partial(rinse_water_exact, n),
            flow,
            2e-4,
            "p2infohouse.org/ref/01/00051.htm, Water Conservation for Electroplaters; exact series",
            "read",
        )
        for n, flow in ((1, 6749), (2, 81.65), (3, 18.55))
    ),
    Published(
        "rinse_single",
        lambda: of("rinse_ratio", water_ratio="2000", stages=1),
        2001,
        1e-12,
        "Yates, Rinsing with Less Water (1977), poly-products.com",
        "second",
    ),
    Published(
        "rinse_single Cn",
        lambda: 10 / of("rinse_ratio", water_ratio="2000", stages=1),
        0.004998,
        1e-4,
        "Yates, Rinsing with Less Water (1977), poly-products.com",
        "second",
    ),
)
OTHER = (
    *(
        Published(
            f"anod720_{asf}",
            partial(of, "anodise_time", oxide="1 mil", density=f"{asf} A/ft2"),
            minutes,
            1e-12,
            WESTRE,
            "read",
        )
        for asf, minutes in ((12, 60), (18, 40), (30, 24), (40, 18))
    ),
    Published(
        "iacs",
        lambda: Quantity(1.7241, "uohm cm").to("ohm mm2/m").number,
        0.017241,
        5e-5,
        "NBS Handbook 100 (1966) in a public note; 1/58 ohm mm2/m",
        "second",
    ),
    *(
        Published(f"barrel_{id} {at}", partial(barrel, d, t, at), mohm, 1e-4, RING, "computed")
        for id, d, t, at, mohm in (
            ("0.3_25", "0.3 mm", "25 um", "20 degC", 1.2772),
            ("0.3_25", "0.3 mm", "25 um", "100 degC", 1.67876),
            ("1.0_25", "1.0 mm", "25 um", "20 degC", 0.36024),
            ("1.0_25", "1.0 mm", "25 um", "100 degC", 0.4735),
            ("0.8_20", "0.8 mm", "20 um", "20 degC", 0.56287),
            ("0.8_20", "0.8 mm", "20 um", "100 degC", 0.73984),
        )
    ),
    Published(
        "ipc2221_2A_10K external", lambda: track("2 A", "10 K", "outside"), 42.393, 1e-3, IPC, "computed"
    ),
    Published(
        "ipc2221_2A_10K internal", lambda: track("2 A", "10 K", "inside"), 110.283, 1e-3, IPC, "computed"
    ),
    Published("ipc2221_2A_10K width", lambda: track_width("2 A", "10 K"), 30.764, 1e-3, IPC, "computed"),
    Published(
        "ipc2221_5A_20K external", lambda: track("5 A", "20 K", "outside"), 98.511, 1e-3, IPC, "computed"
    ),
    Published(
        "ipc2221_5A_20K internal", lambda: track("5 A", "20 K", "inside"), 256.27, 1e-3, IPC, "computed"
    ),
    Published("ipc2221_5A_20K width", lambda: track_width("5 A", "20 K"), 71.488, 1e-3, IPC, "computed"),
    *(
        Published(
            f"z535_{feet}ft",
            partial(of, "letter_height", "in", distance=f"{feet} ft"),
            inches,
            1e-12,
            Z535,
            "second",
        )
        for feet, inches in (
            (8, 0.32),
            (15, 0.6),
            (20, 0.8),
            (40, 1.6),
            (60, 2.4),
            (100, 4.0),
            (125, 5.0),
            (200, 8.0),
        )
    ),
    # The row for 5 ft prints 0.24, where a three-hundredth gives 0.20, and the page says so.
    Published(
        "z535_5ft", lambda: 1.2 * of("letter_height", "in", distance="5 ft"), 0.24, 1e-12, Z535, "second"
    ),
)

ALL = PLATING + LIQUIDS + OTHER

# Published values of the mixture rules for hazards are held against generator.hazards.
IN_HAZARDS = {
    "ate_un_1": ("test_acute.py", "1880"),
    "ate_un_3": ("test_acute.py", "43425"),
    "ate_un_4_inh": ("test_acute.py", "6.557"),
    "nitric_ate_bands": ("test_acute.py", "13.25"),
    "skin_un": ("test_skin.py", "3.2.3.3.4"),
}
