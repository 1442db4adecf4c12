"""What a wrong number does, what is unusual, and tables of answers."""

from typing import Any

import pytest

from generator.formulas import LIBRARY, Formula, FormulaError, find_formula
from generator.formulas.lab_file import read_formulas
from generator.formulas.reckoner import reckon, round_values
from generator.formulas.sensitivity import outside_usual, sensitivity
from generator.units import Quantity, read_window

CURRENT = find_formula("plating_current")
CURRENT_JOB: dict[str, Any] = {"density": "1.9 A/dm2", "area": "2.57 dm2", "contact_area": "0.06 dm2"}


def test_a_wrong_area() -> None:
    says = [shift.says for shift in sensitivity(CURRENT, CURRENT_JOB)]
    assert says == [
        "density 10 % low gives 4.5 A instead of 5.0 A",
        "density 10 % high gives 5.5 A instead of 5.0 A",
        "area 10 % low gives 4.5 A instead of 5.0 A",
        "area 10 % high gives 5.5 A instead of 5.0 A",
        "contact_area 10 % low gives 5.0 A instead of 5.0 A",
        "contact_area 10 % high gives 5.0 A instead of 5.0 A",
    ]
    area = sensitivity(CURRENT, CURRENT_JOB)[2]
    assert area.change == pytest.approx(-0.257 / 2.63, rel=1e-12)


def test_what_cannot_be_is_left_out_and_degrees_are_degrees() -> None:
    time = sensitivity(find_formula("plating_time"), {"copper": "22 um", "density": "1.9 A/dm2"})
    assert "efficiency 10 % high" not in " ".join(shift.says for shift in time)
    barrel = find_formula("barrel_resistance")
    shifts = sensitivity(barrel, barrel.examples[0].given)
    assert "temperature 5 degrees high gives 0.367 mohm instead of 0.360 mohm" in [
        each.says for each in shifts
    ]


@pytest.mark.parametrize("formula", LIBRARY, ids=lambda formula: formula.name)
def test_every_formula_has_its_sensitivity(formula: Formula) -> None:
    for shift in sensitivity(formula, formula.examples[0].given):
        assert shift.right == formula.answer.rounded(formula.evaluate(formula.examples[0].given))
        assert formula.name == "stagger" or shift.says


def test_what_is_unusual() -> None:
    found = outside_usual(CURRENT, {**CURRENT_JOB, "density": "4 A/dm2"})
    assert [(each.name, each.usual) for each in found] == [("density", read_window("1 to 3 A/dm2"))]
    lab = {"density": read_window("1 to 5 A/dm2"), "area": read_window("up to 2 dm2")}
    assert [each.name for each in outside_usual(CURRENT, {**CURRENT_JOB, "density": "4 A/dm2"}, lab)] == [
        "area"
    ]


def test_a_labs_own_formula_is_told_alike() -> None:
    head = "def mix_ratio(resin, parts_b=32):\n    '''B. Unit: as the resin.'''\n"
    (formula,) = read_formulas(head + "    return resin * parts_b / 100\n", "formulas.py").formulas
    values = {"resin": Quantity(182, "g")}
    usual = {"resin": read_window("200 to 300 g")}
    assert [each.name for each in outside_usual(formula, values, usual)] == ["resin"]
    assert sensitivity(formula, values)[0].says == "resin 10 % low gives 52.42 g instead of 58.24 g"


def test_round_values() -> None:
    def numbers(window: str, most: int = 8) -> list[float]:
        return [each.number for each in round_values(read_window(window), most)]

    assert numbers("15 to 35 um") == [15, 20, 25, 30, 35]
    assert numbers("1 to 3 A/dm2") == [1, 1.5, 2, 2.5, 3]
    assert numbers("0.3 to 3.2 mm") == [0.5, 1, 1.5, 2, 2.5, 3]
    assert numbers("1 to 2 mm", 5) == [1, 1.25, 1.5, 1.75, 2]
    assert numbers("8 min") == [8]
    assert numbers("10 to 1000 g", 5) == [250, 500, 750, 1000]
    assert [each.decimals for each in round_values(read_window("1 to 2 mm"), 5)] == [2] * 5


def test_a_table_of_times() -> None:
    table = reckon(find_formula("plating_time"), "copper", "density")
    assert [row.number for row in table.rows] == [15, 20, 25, 30, 35]
    assert [column.number for column in table.columns] == [1, 1.5, 2, 2.5, 3]
    assert table.cells[1][2] == Quantity(46.8, "min")
    wanted = find_formula("plating_time").evaluate({"copper": "20 um", "density": "2 A/dm2"})
    assert table.cells[1][2] == find_formula("plating_time").answer.rounded(wanted)


def test_a_table_of_one_input_and_with_own_steps() -> None:
    table = reckon(find_formula("letter_height"), "distance", rows=[Quantity(n, "m") for n in (1, 1.5, 2)])
    assert [cell for (cell,) in table.cells] == [
        Quantity(3.4, "mm"),
        Quantity(5.0, "mm"),
        Quantity(6.7, "mm"),
    ]


def test_a_cell_that_cannot_be_is_empty() -> None:
    table = reckon(
        find_formula("annular_ring"),
        "pad",
        "drill",
        {"misregistration": "0.05 mm"},
        [Quantity(1, "mm"), Quantity(90, "mm")],
        [Quantity(0.8, "mm")],
    )
    assert table.cells == ((Quantity(0.05, "mm"),), (None,))


def test_a_table_needs_the_other_inputs() -> None:
    with pytest.raises(FormulaError, match=r"area .* is not given"):
        reckon(CURRENT, "density")
    with pytest.raises(FormulaError, match="`holes` is no single quantity"):
        reckon(find_formula("plating_area"), "holes")
