"""Formulas on the command line: answers, refusals in the trade's words, a lab's own settings and formulas."""

import json
import re
from math import pi
from pathlib import Path

import pytest

from generator.formulas import LIBRARY, Choice, Formula, Rows, Sizes
from generator.units import show_quantity
from tests.cli.running import make_lab, run_newel

PLATING = ("plating_time", "copper=22 um", "density=1.9 A/dm2", "efficiency=97 %")
BOARD = ("length=140 mm", "width=95 mm", "board_thickness=1.55 mm", "masked=8 mm")
HOLES = "holes=180 x 0.9 mm, 26 x 1.3 mm"


def plain(text: str) -> str:
    return text.replace("\u00a0", " ").replace("\u202f", " ")


def test_the_answer_with_its_unit_the_sum_and_the_cautions(capsys: pytest.CaptureFixture[str]) -> None:
    """54.1 min is the worked number of the invented job, by Faraday's law (OpenStax Chemistry 2e, 17.7)."""
    run = run_newel(capsys, "calculate", *PLATING)
    lines = plain(run.out).splitlines()
    assert run.status == 0
    assert lines[0] == "Time for plating: 54.1 min"
    assert lines[1].strip() == "t = δ ρ z F / (M j η)"
    assert "   = caution: This is the average on the face. The middle of a hole gets less." in lines
    assert "metal       copper     metal that is plated (the formula's default)" in plain(run.out)
    assert run.err == ""


def test_as_json(capsys: pytest.CaptureFixture[str]) -> None:
    run = run_newel(capsys, "calculate", *PLATING, "--format", "json")
    data = json.loads(run.out)
    assert sorted(data) == ["answer", "formula", "inputs"]
    assert data["formula"] == "plating_time"
    assert data["answer"]["unit"] == "min"
    faraday, molar, dense = 96485.33212, 63.546e-3, 8960.0
    seconds = 22e-6 * dense * 2 * faraday / (molar * 190 * 0.97)
    assert data["answer"]["value"] == pytest.approx(seconds / 60, rel=1e-12)
    assert data["inputs"]["copper"] == {"value": 22.0, "unit": "um"}
    assert data["inputs"]["metal"] == "copper"


def test_rows_and_a_choice(capsys: pytest.CaptureFixture[str]) -> None:
    run = run_newel(capsys, "calculate", "plating_area", *BOARD, HOLES, "--in", "cm2", "--format", "json")
    faces = 2 * (13.2 * 9.5) - 2 * pi / 4 * (180 * 0.09**2 + 26 * 0.13**2)
    walls = pi * (180 * 0.09 + 26 * 0.13) * 0.155
    assert json.loads(run.out)["answer"] == {"value": pytest.approx(faces + walls, rel=1e-12), "unit": "cm2"}
    assert json.loads(run.out)["inputs"]["holes"][1] == {"count": 26.0, "drill": {"value": 1.3, "unit": "mm"}}
    nickel = run_newel(capsys, "calculate", *PLATING, "metal=nickel", "--format", "json")
    copper = run_newel(capsys, "calculate", *PLATING, "--format", "json")
    assert json.loads(nickel.out)["answer"] != json.loads(copper.out)["answer"]


def test_turned_round(capsys: pytest.CaptureFixture[str]) -> None:
    words = ("plating_time", "density=1.9 A/dm2", "efficiency=97 %", "answer=54.132387030080444 min")
    run = run_newel(capsys, "calculate", *words, "--work-out", "copper", "--format", "json")
    data = json.loads(run.out)
    assert data["solved_for"] == "copper"
    assert data["answer"] == {"value": pytest.approx(22.0, rel=1e-12), "unit": "um"}


def test_alone_it_lists_every_formula(capsys: pytest.CaptureFixture[str]) -> None:
    run = run_newel(capsys, "calculate")
    assert run.status == 0
    assert {formula.name for formula in LIBRARY} <= set(re.findall(r"^  (\w+)", run.out, re.MULTILINE))
    listed = json.loads(run_newel(capsys, "calculate", "--format", "json").out)
    assert [row["formula"] for row in listed] == [formula.name for formula in LIBRARY]


@pytest.mark.parametrize(
    ("words", "says", "fix"),
    [
        (("platng_time",), "there is no formula `platng_time`", "did you mean `plating_time`?"),
        (("plating_time", "density=1.9 A/dm2"), "copper (metal thickness wanted on the face) is not given",
         "give `copper`"),
        ((*PLATING[:1], "copper=22 min", "density=2 A/dm2"), "is 22 min: time", "give it in um"),
        ((*PLATING[:1], "copper=22,5 um", "density=2 A/dm2"), "cannot be read", "write 22.5 um"),
        ((*PLATING[:1], "copper=22", "density=2 A/dm2"), "`22` has no unit", "write 22 um"),
        ((*PLATING, "metal=cheese"), "`cheese` is not in the table", "use one of: copper"),
        ((*PLATING, "eficiency=97 %"), "`eficiency` is no input", "write `efficiency`"),
        ((*PLATING, "copper=20 um"), "`copper` is given twice", "leave one"),
        (("plating_time", "22 um"), "`22 um` gives nothing a value", 'such as copper="22 um"'),
        ((*PLATING[:3], "efficiency=120 %"), "must be 1 to 100 %", "check the number"),
        (("plating_area", *BOARD, "holes=180 x 0,9 mm"), "can be read in two ways", "write 0.9 with a point"),
        (("plating_area", *BOARD, "holes=180"), "count x drill is expected", "write holes="),
        (("plating_area", *BOARD[1:], "length=5 mm", HOLES), "masked strip", "check the numbers"),
        ((*PLATING, "--in", "kg"), "kg measures something else", "ask for min"),
        (("plating_area", "--work-out", "holes"), "cannot be solved for `holes`", "solve for"),
    ],
)  # fmt: skip
def test_a_refusal_is_in_the_trades_words(
    capsys: pytest.CaptureFixture[str], words: tuple[str, ...], says: str, fix: str
) -> None:
    run = run_newel(capsys, "calculate", *words)
    assert (run.status, run.out) == (1, "")
    assert says in plain(run.err)
    assert f"fix: {fix}" in plain(run.err) or fix in plain(run.err).partition("fix: ")[2]
    as_json = run_newel(capsys, "calculate", *words, "--format", "json")
    assert as_json.status == 1
    assert says in plain(json.loads(as_json.out)["error"])


LAB = """calculators:
  plating_current:
    defaults: {contact_area: 0.06 dm2}
    usual: {density: 1 to 2 A/dm2}
    never_above: {current: 6 A}
  half_of: {usual: {mass: 1 to 9 g}}
"""
OWN = '''def half_of(mass):
    """Half of a mass.

    Decides: nothing. Unit: as the mass.
    Source: arithmetic.

    >>> half_of(4)
    2.0
    """
    return mass / 2
'''


def test_a_labs_settings_and_own_formulas(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    home = str(make_lab(tmp_path, LAB, **{"procedures/formulas.py": OWN}))
    words = ("calculate", "plating_current", "area=2.57 dm2", "--folder", home)
    run = run_newel(capsys, *words, "density=1.9 A/dm2")
    assert "contact_area  0.06 dm²   bare rack metal and coupon in the bath (this lab's default)" in plain(
        run.out
    )
    assert "look again" not in run.out
    assert "density is 2.2 A/dm²; usual is 1 to 2 A/dm²" in plain(
        run_newel(capsys, *words, "density=2.2 A/dm2").out
    )
    above = run_newel(capsys, *words, "density=2.9 A/dm2")
    assert (above.status, above.out) == (1, "")
    assert "current is 7.6 A, and never above 6 A in this lab" in plain(above.err)
    own = run_newel(capsys, "calculate", "half_of", "mass=3 g", "--folder", home)
    assert plain(own.out).startswith("Half of a mass: 1.5 g")
    assert "write 3 g" in run_newel(capsys, "calculate", "half_of", "mass=3", "--folder", home).err
    assert "half_of" in run_newel(capsys, "calculate", "--folder", home).out


def as_words(formula: Formula) -> list[str]:
    """The first worked example as it is typed."""
    words = []
    for name, value in formula.examples[0].given.items():
        match formula.input(name):
            case Rows():
                rows = (" x ".join(str(cell) for cell in row.values()) for row in value)
                words.append(f"{name}={', '.join(rows)}")
            case Sizes():
                words.append(f"{name}={', '.join(map(str, value))}")
            case Choice():
                words.append(f"{name}={value}")
            case _:
                words.append(f"{name}={value}")
    return words


@pytest.mark.parametrize("formula", LIBRARY, ids=lambda formula: formula.name)
def test_every_worked_example_on_the_command_line(
    capsys: pytest.CaptureFixture[str], formula: Formula
) -> None:
    run = run_newel(capsys, "calculate", formula.name, *as_words(formula))
    assert run.status == 0, run.err
    answer = formula.evaluate(formula.examples[0].given)
    assert plain(run.out).startswith(plain(f"{formula.title}: {formula.answer.show(answer)}"))
    assert show_quantity(answer)
