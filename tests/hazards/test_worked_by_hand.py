"""Fifteen mixtures worked by hand from the rules of the GHS chapters, on each side of every boundary.

Clauses and limits: CLP Annex I, whose paragraph numbers are those of the UN GHS (the evidence of each limit
stands in generator/hazards/data/limits.json). The mixtures are invented; the arithmetic stands beside each.
Every one is worked twice: from words as on a command line, and from the YAML of a lab.
"""

from pathlib import Path

import pytest

from generator.hazards import Composition, Ingredient, Screening, is_thin, screen, stated_ingredient
from generator.reading import open_folder, read_lab
from generator.study.composition import composition_of
from generator.units import read_numbers_window, read_quantity
from tests.checks.cases import Case, check_case, write_lab

WATER = "water=rest"

# title, parts (name=share with statements), pH, viscosity at 40 degC, statements expected, supplements
WORKED: tuple[tuple[str, tuple[str, ...], str, str, tuple[str, ...], tuple[str, ...]], ...] = (
    # 1  skin and eye sums, tables 3.2.3 and 3.3.3: 5/5 = 1 corrodes; 4.999/5 < 1, but 4.999/3 damages eyes
    ("corrosive at 5 %", ("a=5 % w/w with H314",), "7", "", ("H314",), ()),
    ("corrosive below 5 %", ("a=4.999 % w/w with H314",), "7", "", ("H315", "H318"), ()),
    ("corrosive at 3 %", ("a=3 % w/w with H314",), "7", "", ("H315", "H318"), ()),
    ("corrosive below 3 %", ("a=2.999 % w/w with H314",), "7", "", ("H315", "H319"), ()),
    ("corrosive below 1 %: not relevant", ("a=0.999 % w/w with H314",), "7", "", (), ()),
    # 2  additivity: 10 x 1 + 0 = 10 irritates skin; 2.5/5 + 2.5/5 = 1 corrodes
    ("two corrosives make one", ("a=2.5 % w/w with H314", "b=2.5 % w/w with H314"), "7", "", ("H314",), ()),
    (
        "two corrosives just not",
        ("a=2.5 % w/w with H314", "b=2.499 % w/w with H314"), "7", "", ("H315", "H318"), (),
    ),
    # 3  irritants: 6 + 4 = 10; 6 + 3.999 < 10; 5/10 + 1 x 0.5 ... a weak corrosive counts ten times
    ("two irritants", ("a=6 % w/w with H315", "b=4 % w/w with H315"), "7", "", ("H315",), ()),
    ("two irritants just not", ("a=6 % w/w with H315", "b=3.999 % w/w with H315"), "7", "", (), ()),
    ("eye damage below 1 %", ("a=0.9 % w/w with H318", "b=9 % w/w with H319"), "7", "", (), ()),
    # eyes: 10 x 1 % + 0 >= 10; and 10 x 0 + 10
    ("eye damage as irritant", ("a=1 % w/w with H318",), "7", "", ("H319",), ()),
    # 4  specific limits, sum of C/SCL (3.2.3.3.5): sulphuric 15 %, hydroxide 2 % (1B): 7.5/15 + 1/2 = 1
    ("two specific limits", ("sulphuric acid=7.5 % w/w", "sodium hydroxide=1 % w/w"), "7", "", ("H314",), ()),
    (
        "two specific limits just not",
        ("sulphuric acid=7.4 % w/w", "sodium hydroxide=1 % w/w"), "7", "", ("H315", "H319"), (),
    ),
    # nitric acid has no band for eyes: the 3 % of table 3.3.3 holds below its 5 % for skin
    ("nitric acid at 4 %", ("nitric acid=4 % w/w",), "7", "", ("H315", "H318"), ()),
    ("nitric acid at 2.9 %", ("nitric acid=2.9 % w/w",), "7", "", ("H315", "H319"), ()),
    # 5  extreme pH (3.2.3.1.2): at 2 and at 11.5
    ("pH 2", ("a=1 % w/w with none",), "2", "", ("H314",), ()),
    ("pH 2.1", ("a=1 % w/w with none",), "2.1", "", (), ()),
    ("pH 11.5", ("a=1 % w/w with none",), "11.5", "", ("H314",), ()),
    ("pH 11.4", ("a=1 % w/w with none",), "11.4", "", (), ()),
    # 6  acute, ranges converted to points (table 3.1.2): H302 -> 500, 500/0.25 = 2000; H301 -> 100
    ("H302 at 25 %", ("a=25 % w/w with H302",), "7", "", ("H302",), ()),
    ("H302 at 24.9 %", ("a=24.9 % w/w with H302",), "7", "", (), ()),
    ("H301 at 5 %: 100/0.05 = 2000", ("a=5 % w/w with H301",), "7", "", ("H302",), ()),
    ("H301 at 4.99 %", ("a=4.99 % w/w with H301",), "7", "", (), ()),
    # 100/0.3334 = 299.9 <= 300; 100/0.333 = 300.3
    ("H301 at 33.34 %", ("a=33.34 % w/w with H301",), "7", "", ("H301",), ()),
    ("H301 at 33.3 %", ("a=33.3 % w/w with H301",), "7", "", ("H302",), ()),
    # dermal points are 5/50/300/1100: 1100/0.55 = 2000; 300/0.3 = 1000
    ("H312 at 55 %", ("a=55 % w/w with H312",), "7", "", ("H312",), ()),
    ("H312 at 54.9 %", ("a=54.9 % w/w with H312",), "7", "", (), ()),
    ("H311 at 30 %", ("a=30 % w/w with H311",), "7", "", ("H311",), ()),
    ("H311 at 29.9 %", ("a=29.9 % w/w with H311",), "7", "", ("H312",), ()),
    # 7  unknown over 10 % (3.1.3.6.2.3): 24/500 = 0.048; 100/0.048 = 2083; (100 - 11)/0.048 = 1854
    ("11 % unknown", ("a=24 % w/w with H302", "riddle=11 % w/w"), "7", "", ("H302",), ()),
    ("10 % unknown", ("a=24 % w/w with H302", "riddle=10 % w/w"), "7", "", (), ()),
    # unknown ingredients below 1 % do not count (3.1.3.6.2.2): 9.5 + 0.9 is not over 10 %
    (
        "9.5 % and 0.9 % unknown",
        ("a=24 % w/w with H302", "riddle=9.5 % w/w", "enigma=0.9 % w/w"), "7", "", (), (),
    ),
    # 8  acute, a sum: 12.5/500 + 2.5/100 = 0.05 -> 2000
    ("two toxic ones", ("a=12.5 % w/w with H302", "b=2.5 % w/w with H301"), "7", "", ("H302",), ()),
    ("two toxic ones just not", ("a=12.5 % w/w with H302", "b=2.49 % w/w with H301"), "7", "", (), ()),
    # 9  sensitisers (tables 3.4.5 and 3.4.6): 1 % classes, 0.1 % is named
    ("skin sensitiser at 1 %", ("a=1 % w/w with H317",), "7", "", ("H317",), ()),
    ("skin sensitiser at 0.999 %", ("a=0.999 % w/w with H317",), "7", "", (), ("EUH208",)),
    ("skin sensitiser at 0.1 %", ("a=0.1 % w/w with H317",), "7", "", (), ("EUH208",)),
    ("skin sensitiser at 0.099 %", ("a=0.099 % w/w with H317",), "7", "", (), ()),
    # with a specific limit a tenth of it: formaldehyde 0.2 % -> named from 0.02 %; H350 from 0.1 %
    ("formaldehyde at 0.02 %", ("formaldehyde=0.02 % w/w",), "7", "", (), ("EUH208",)),
    ("formaldehyde at 0.019 %", ("formaldehyde=0.019 % w/w",), "7", "", (), ()),
    ("formaldehyde at 0.1 %", ("formaldehyde=0.1 % w/w",), "7", "", ("H350",), ("EUH208",)),
    # 10  airways, STOT SE 3 (3.8.3.4.5): 12 + 8 = 20 of one kind; two kinds are not added
    ("airways", ("a=12 % w/w with H335", "b=8 % w/w with H335"), "7", "", ("H335",), ()),
    ("airways just not", ("a=12 % w/w with H335", "b=7.9 % w/w with H335"), "7", "", (), ()),
    ("airways and drowsiness", ("a=12 % w/w with H335", "b=8 % w/w with H336"), "7", "", (), ()),
    # 11  organs: category 1 at 10 %, one step down from 1 %; category 2 at 10 %
    ("H372 at 10 %", ("a=10 % w/w with H372",), "7", "", ("H372",), ()),
    ("H372 at 9.99 %", ("a=9.99 % w/w with H372",), "7", "", ("H373",), ()),
    ("H372 at 0.99 %", ("a=0.99 % w/w with H372",), "7", "", (), ()),
    ("H373 at 9.99 %", ("a=9.99 % w/w with H373",), "7", "", (), ()),
    # 12  aspiration (3.10.3.3): 10 % and not thicker than 20.5 mm2/s at 40 degC
    ("thin at the edge", ("a=6 % w/w with H304", "b=4 % w/w with H304"), "7", "20.5 mm2/s", ("H304",), ()),
    ("too thick", ("a=6 % w/w with H304", "b=4 % w/w with H304"), "7", "20.6 mm2/s", (), ()),
    ("too little", ("a=6 % w/w with H304", "b=3.9 % w/w with H304"), "7", "5 mm2/s", (), ()),
    # 13  aquatic weights (4.1.3.5.5): chronic 1 counts 10 for chronic 2 and 100 for chronic 3
    ("H410 at 25 %", ("a=25 % w/w with H410",), "7", "", ("H410",), ()),
    ("H410 at 2.5 %: 10 x 2.5", ("a=2.5 % w/w with H410",), "7", "", ("H411",), ()),
    ("H410 at 0.25 %: 100 x 0.25", ("a=0.25 % w/w with H410",), "7", "", ("H412",), ()),
    ("H410 at 0.249 %", ("a=0.249 % w/w with H410",), "7", "", (), ()),
    # 10 x 1 + 15 = 25 chronic 2 ... as chronic 3: 10 x 1 + 15 = 25
    ("H411 and H412", ("a=1 % w/w with H411", "b=15 % w/w with H412"), "7", "", ("H412",), ()),
    ("H411 and H412 just not", ("a=1 % w/w with H411", "b=14.9 % w/w with H412"), "7", "", (), ()),
    ("chronic 4 is a plain sum", ("a=13 % w/w with H413", "b=12 % w/w with H413"), "7", "", ("H413",), ()),
    # 14  M-factor: copper sulphate, M 10 for acute: 2.5 x 10 = 25, and below it 10 x 24.9 acute 2;
    # chronic M 1: 10 x 2.5 = 25; eyes 2.5 < 3
    (
        "copper sulphate 2.5 %",
        ("copper sulphate pentahydrate=2.5 % w/w",), "4", "", ("H319", "H400", "H411"), (),
    ),
    (
        "copper sulphate 2.49 %",
        ("copper sulphate pentahydrate=2.49 % w/w",), "4", "", ("H319", "H401", "H412"), (),
    ),
    # 15  inhaled, by the entry's own estimate: nitric acid 2.65 mg/L; 2.65/0.1325 = 20.0
    ("nitric acid 13.25 %", ("nitric acid=13.25 % w/w",), "", "", ("H314", "H332"), ()),
    ("nitric acid 13.2 %", ("nitric acid=13.2 % w/w",), "", "", ("H314",), ()),
)  # fmt: skip


def worked(parts: tuple[str, ...], ph: str, viscosity: str) -> Screening:
    """A mixture from words as on a command line, water to a hundred."""
    made = [stated_ingredient(part) for part in (*parts, WATER)]
    given = tuple(one for one in made if isinstance(one, Ingredient))
    assert len(given) == len(made), made
    thin = is_thin(read_quantity(viscosity)) if viscosity else None
    window = read_numbers_window(ph) if ph else None
    found = screen(Composition("worked", given, ph=window, thin=thin))
    assert isinstance(found, Screening), found
    return found


@pytest.mark.parametrize("row", WORKED, ids=lambda row: str(row[0]))
def test_worked_mixture(row: tuple[str, tuple[str, ...], str, str, tuple[str, ...], tuple[str, ...]]) -> None:
    _, parts, ph, viscosity, statements, supplements = row
    found = worked(parts, ph, viscosity)
    assert (found.statements, found.supplements) == (statements, supplements), found.steps


def in_yaml(parts: tuple[str, ...], ph: str, viscosity: str) -> str:
    """The same mixture as a lab's own: what has statements is a substance without a CAS number."""
    substances, made_of = [], []
    for number, part in enumerate(parts):
        name, _, rest = part.partition("=")
        amount, _, codes = rest.partition(" with ")
        stated = "[], not_classified: true" if codes == "none" else f"[{codes.replace(' ', ', ')}]"
        sheet = "sheet: {held_at: tab, dated: 2026-02-11}"
        hazards = f"hazards: {stated}, " if codes else ""
        substances.append(f"  part-{number}: {{title: {name}, mixture: true, {hazards}groups: [], {sheet}}}")
        made_of.append(f"part-{number}: {amount}")
    more = f", ph: {ph}" * bool(ph) + f", viscosity: {viscosity}" * bool(viscosity)
    made = ", ".join((*made_of, "deionised-water: rest"))
    mixture = f"  worked: {{title: Worked, made_of: {{{made}}}, density: 1.0 kg/L{more}, hazards: [H303]}}"
    return "\n".join(("substances:", *substances, "mixtures:", mixture))


@pytest.mark.parametrize(
    "row",
    [row for row in WORKED if all(" with " in part for part in row[1])][::4],
    ids=lambda row: str(row[0]),
)
def test_the_same_from_a_lab(
    row: tuple[str, tuple[str, ...], str, str, tuple[str, ...], tuple[str, ...]], tmp_path: Path
) -> None:
    _, parts, ph, viscosity, statements, _ = row
    case = Case("hazard-screen", "worked", {"lab": in_yaml(parts, ph, viscosity), "found": "nothing"})
    write_lab(case, tmp_path / "lab")
    read = read_lab(open_folder(tmp_path / "lab", "procedures"))
    assert read.lab is not None, read.problems
    composition = composition_of(read.lab, "worked")
    assert composition is not None
    found = screen(composition)
    assert isinstance(found, Screening)
    assert found.statements == statements


def test_what_a_mixture_implies_and_does_not_declare_is_a_warning(tmp_path: Path) -> None:
    # 2.5/5 + 2.5/5 = 1: two weak corrosives, neither of which corrodes by itself
    lab = in_yaml(("a=2.5 % w/w with H314", "b=2.5 % w/w with H314"), "7", "")
    found = check_case(Case("hazard-screen", "two", {"lab": lab, "found": ""}), tmp_path / "p").problems
    told = [p.message for p in found if p.rule == "hazard-screen"]
    assert len(told) == 1 and "Skin Corr. 1 (H314)" in told[0]
