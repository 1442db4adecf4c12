"""A formula's values, refusals and rounding, and the formula turned round."""

from typing import Any

import pytest

from generator.formulas import LIBRARY, FormulaError, check_examples, find_formula
from generator.formulas.inverse import solvable, solve_for
from generator.units import Counted, Quantity, show_quantity
from generator.units.pint_door import from_pint, registry

TIME = find_formula("plating_time")
JOB: dict[str, Any] = {"copper": "22 um", "density": "1.9 A/dm2", "efficiency": "97 %"}


def test_values_may_be_quantities_texts_or_counts() -> None:
    as_text = TIME.evaluate(JOB)
    assert as_text == TIME.evaluate({**JOB, "copper": Quantity(22, "um")})
    assert as_text.number == pytest.approx(TIME.evaluate({**JOB, "copper": "0.022 mm"}).number, rel=1e-14)
    assert as_text.unit == "min"
    area = find_formula("plating_area")
    holes: list[Any] = [{"count": Counted(10, "holes"), "drill": "1 mm"}]
    plain: list[Any] = [{"count": 10, "drill": "1 mm"}]
    plate: dict[str, Any] = {"length": "100 mm", "width": "50 mm", "board_thickness": "1 mm"}
    counted = area.evaluate({**plate, "holes": holes})
    assert counted == area.evaluate({**plate, "holes": plain})


REFUSED: list[tuple[dict[str, Any], str, str]] = [
    ({"copper": None}, "copper (metal thickness wanted on the face) is not given", "give `copper`"),
    ({"density": "1.9"}, "`1.9` has no unit", "write 1.9 A/dm2"),
    (
        {"density": 1.9},
        "density (current density, current for each area) is 1.9 without a unit",
        "write 1.9 A/dm2",
    ),
    (
        {"density": "1.9 A"},
        "density (current density, current for each area) is 1.9\u00a0A: "
        "electric current and not current density",
        "give it in A/dm2 or mA/cm2 or A/m2 or A/ft2",
    ),
    (
        {"efficiency": "130 %"},
        "efficiency (share of the current that lays down metal) is 130\u00a0%, and must be 1 to 100\u00a0%: "
        "no more metal is laid down than the charge carries",
        "check the number and its unit",
    ),
    ({"efficency": "97 %"}, "`efficency` is no input", "write `efficiency`"),
    (
        {"metal": "tin"},
        "`tin` is not in the table of metals",
        "use one of: copper, nickel, zinc, silver, chromium",
    ),
    (
        {"copper": True},
        "copper (metal thickness wanted on the face) is no quantity",
        "give it in um or mm or mil",
    ),
]


@pytest.mark.parametrize(("change", "what", "fix"), REFUSED, ids=lambda value: str(value)[:40])
def test_refused(change: dict[str, Any], what: str, fix: str) -> None:
    values = {name: value for name, value in {**JOB, **change}.items() if value is not None}
    with pytest.raises(FormulaError) as caught:
        TIME.evaluate(values)
    assert (caught.value.what, caught.value.fix) == (what, fix)


PLATE: dict[str, Any] = {"length": "100 mm", "width": "50 mm", "board_thickness": "1 mm"}
HOLES: list[tuple[Any, str]] = [
    ("many", "holes (holes of the board, one row for each drill) is no list"),
    (
        [{"count": 1}],
        "row 1 of holes (holes of the board, one row for each drill) has not just count and drill",
    ),
    ([{"count": 1.5, "drill": "1 mm"}], "count (how many of these) is 1.5, and must be a whole number"),
]


@pytest.mark.parametrize(("holes", "what"), HOLES)
def test_rows_refused(holes: Any, what: str) -> None:
    with pytest.raises(FormulaError) as caught:
        find_formula("plating_area").evaluate({**PLATE, "holes": holes})
    assert caught.value.what == what


def test_inputs_are_held_against_each_other() -> None:
    with pytest.raises(FormulaError, match="the masked strip is as long as the board"):
        find_formula("plating_area").evaluate({**PLATE, "masked": "100 mm", "holes": []})


def test_a_share_by_volume_is_no_share_by_mass() -> None:
    given = {"target": "190 g/L", "bath_volume": "42 L", "stock_density": "1.84 kg/L"}
    liquid = find_formula("make_up_liquid")
    assert liquid.evaluate({**given, "stock_strength": "96 %"}) == liquid.evaluate(
        {**given, "stock_strength": "96 % w/w"}
    )
    with pytest.raises(FormulaError) as caught:
        liquid.evaluate({**given, "stock_strength": "96 % v/v"})
    assert caught.value.what.endswith("is 96\u00a0%\u00a0v/v: a share by volume and not a share by mass")
    assert caught.value.fix == "give it in % w/w or %"


def test_a_time_of_day() -> None:
    latest = find_formula("latest_start")
    found = latest.evaluate({"until": "16:05", "pack_up": "20 min", "run_time": "2.5 h"})
    assert latest.answer.show(found) == "13:15"
    assert latest.evaluate({"until": Quantity(965, "min"), "pack_up": "20 min", "run_time": "2.5 h"}) == found


def test_a_bound_is_inside_in_any_unit() -> None:
    assert TIME.evaluate({**JOB, "copper": "1 mm"}).number > 0
    with pytest.raises(FormulaError):
        TIME.evaluate({**JOB, "copper": "1.001 mm"})


def test_rounding_of_an_answer() -> None:
    answer = find_formula("letter_height").answer
    assert show_quantity(answer.rounded(Quantity(5.01, "mm"))) == "5.1\u00a0mm"
    assert show_quantity(answer.rounded(Quantity(5.0000000001, "mm"))) == "5.0\u00a0mm"
    time = TIME.answer
    assert show_quantity(time.rounded(TIME.evaluate(JOB))) == "54.1\u00a0min"
    assert show_quantity(time.rounded(TIME.evaluate(JOB).to("s"))) == "3248\u00a0s"
    assert show_quantity(time.rounded(TIME.evaluate(JOB).to("h"))) == "0.902\u00a0h"


def test_the_python_interface_speaks_pint() -> None:
    units = registry()
    found = TIME.with_pint(
        copper=units.Quantity(22, "micrometer"),
        density=units.Quantity(19, "milliampere/centimeter**2"),
        efficiency=units.Quantity(97, "percent"),
    )
    assert from_pint(found, "s").number == pytest.approx(TIME.evaluate(JOB).si, rel=1e-13)
    with pytest.raises(FormulaError):
        TIME.with_pint(copper=units.Quantity(22, "second"), density=units.Quantity(1, "A/m**2"))


def test_rows_take_pint_too() -> None:
    units = registry()
    board = {"length": "140 mm", "width": "95 mm", "board_thickness": "1.55 mm", "masked": "8 mm"}
    found = find_formula("plating_area").with_pint(
        **board, holes=({"count": 180, "drill": units.Quantity(0.9, "mm")}, {"count": 26, "drill": "1.3 mm"})
    )
    assert round(found.to("dm**2").magnitude, 2) == 2.57


@pytest.mark.parametrize("name", [formula.name for formula in LIBRARY])
def test_turned_round_it_gives_the_input_back(name: str) -> None:
    formula = find_formula(name)
    for wanted in solvable(formula):
        inverse = solve_for(formula, wanted)
        for example in formula.examples:
            if wanted not in example.given:
                continue
            others = {key: value for key, value in example.given.items() if key != wanted}
            found = inverse.evaluate(formula.evaluate(example.given), others)
            given = inverse.wanted.read(str(example.given[wanted]))
            assert found.si == pytest.approx(given.si, rel=1e-9), wanted


def test_what_can_be_solved_for() -> None:
    assert solvable(TIME) == ("copper", "density", "efficiency")
    assert "copper" not in solvable(find_formula("barrel_resistance"))
    with pytest.raises(FormulaError, match="it cannot be solved for `copper`") as caught:
        solve_for(find_formula("barrel_resistance"), "copper")
    assert caught.value.fix.startswith("solve for: board_thickness")


def test_an_impossible_answer_is_refused() -> None:
    efficiency = solve_for(TIME, "efficiency")
    with pytest.raises(FormulaError, match="no more metal is laid down than the charge carries"):
        efficiency.evaluate("10 min", {"copper": "22 um", "density": "1.9 A/dm2"})


def test_unknown_formula() -> None:
    with pytest.raises(FormulaError) as caught:
        find_formula("plating_tim")
    assert caught.value.fix == "write `plating_time`"


def test_a_wrong_example_is_seen() -> None:
    from dataclasses import replace

    from generator.formulas import Example

    wrong = replace(TIME, examples=(Example(JOB, "54.3 min"),))
    assert check_examples(wrong) == (
        "plating_time: the worked example says 54.3 min, and 54.1324 min comes out",
    )
