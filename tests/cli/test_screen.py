"""`newel screen`: a bath of the lab, or parts named on the command line; located errors; exit status."""

import json
from pathlib import Path
from typing import Any

import pytest

from tests.cli.running import make_lab, run_newel

KEYS = {"classes", "statements", "signal", "pictograms", "unknown", "steps"}
DEMO = Path(__file__).parents[2] / "procedures"


def screened(capsys: pytest.CaptureFixture[str], *words: str) -> Any:
    run = run_newel(capsys, "screen", *words, "--format", "json")
    assert run.status == 0, run.out + run.err
    # The caution stands beside the data, so that a pipe gets the data alone.
    assert "the supplier's sheet, the safety office and the law in force decide" in run.err
    return json.loads(run.out)


def test_the_copper_bath_by_hand(capsys: pytest.CaptureFixture[str]) -> None:
    """72 g/L copper sulphate pentahydrate and 190 g/L H2SO4 at 1.16 kg/L.

    By hand: 190 / (10 x 1.16) = 16.379 % acid, at or over the specific limit of 15 % for Skin Corr. 1A
    (Annex VI entry of sulphuric acid, read on a page that quotes it): 16.379 / 15 = 1.0920.
    Copper sulphate 72 / 11.6 = 6.2069 %; with M = 10 the acute sum is 62.07 % >= 25 % (4.1.3.5.5),
    chronic: 10 x 6.2069 = 62.07 % >= 25 %, Chronic 2 (M chronic 1), 6.2069 < 25 % for Chronic 1.
    """
    found = screened(capsys, "copper-mix", "--folder", str(DEMO))
    assert set(found) == KEYS
    assert found["classes"] == ["Skin Corr. 1A", "Eye Dam. 1", "Aquatic Acute 1", "Aquatic Chronic 2"]
    assert found["signal"] == "Danger"
    assert found["pictograms"] == ["GHS05", "GHS09"]
    corrosion = next(step for step in found["steps"] if step["rule"] == "Skin corrosion")
    assert corrosion["total"] == pytest.approx(190 / 11.6 / 15)
    acute = next(step for step in found["steps"] if step["rule"] == "Aquatic Acute 1")
    assert acute["total"] == pytest.approx(10 * 72 / 11.6)


def test_a_place_names_its_mixture(capsys: pytest.CaptureFixture[str]) -> None:
    by_place = screened(capsys, "copper", "--folder", str(DEMO))
    assert by_place == screened(capsys, "copper-mix", "--folder", str(DEMO))


def test_parts_on_the_command_line(capsys: pytest.CaptureFixture[str]) -> None:
    words = ("--part", "sulphuric acid=190 g/L", "--part", "water=rest", "--density", "1.2 kg/L")
    found = screened(capsys, *words)
    assert found["statements"] == ["H314"]
    assert found["steps"][0]["total"] == pytest.approx(19.0 / 1.2 / 15)
    assert any(text.startswith("pH: not given") for text in found["unknown"])


def test_strength_and_density_of_a_part(capsys: pytest.CaptureFixture[str]) -> None:
    """100 mL/L of 96 % acid at 1.84 kg/L in 1.1 kg/L: 100 x 1.84 x 0.96 / 11 = 16.06 %, over 15 %."""
    words = ("--part", "sulfuric acid=100 mL/L of 96 % w/w at 1.84 kg/L", "--density", "1.1 kg/L")
    found = screened(capsys, *words)
    assert found["steps"][0]["total"] == pytest.approx(100 * 1.84 * 0.96 / 11 / 15)


def test_the_boundary_of_skin_corrosion(capsys: pytest.CaptureFixture[str]) -> None:
    """Table 3.2.3 of CLP Annex I: 5 % corrosive is Skin Corr. 1, 4.999 % an irritant, 0.999 % neither."""
    expected = {"5": "H314", "4.999": "H315", "1": "H315", "0.999": ""}
    for percent, code in expected.items():
        found = screened(capsys, "--part", f"stuff={percent} % w/w with H314", "--part", "water=rest")
        skin = [one for one in found["statements"] if one in ("H314", "H315")]
        assert skin == ([code] if code else []), percent


def test_what_nobody_knows_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    found = screened(capsys, "--part", "zork=3 % w/w", "--part", "water=rest")
    assert found["classes"] == []
    assert "zork: its hazards are not declared" in found["unknown"]
    run = run_newel(capsys, "screen", "--part", "zork=3 % w/w", "--part", "water=rest")
    assert "That is not a statement of safety." in run.out
    assert "zork: its hazards are not declared" in run.out


def test_a_slip_in_a_name_is_no_unknown(capsys: pytest.CaptureFixture[str]) -> None:
    run = run_newel(capsys, "screen", "--part", "sulphuric acd=190 g/L", "--density", "1.2 kg/L")
    assert run.status == 1
    assert "--> --part 1" in run.out
    assert 'did you mean "sulfuric acid"?' in run.out


@pytest.mark.parametrize(
    ("words", "place", "says"),
    [
        (("--part", "water"), "--part 1", "no part"),
        (("--part", "water=rest", "--part", "acetone=1,5 g/L"), "--part 2", "1.5 g/L"),
        (("--part", "acetone=3 % w/w with H999"), "--part 1", "H999 is no H statement"),
        (("--part", "acetone=3 % w/w", "--density", "heavy"), "--density", "heavy"),
        (("--part", "acetone=3 % w/w", "--density", "3 min"), "--density", "kg/L"),
        (("--part", "sulfuric acid=10 mL/L", "--density", "1 kg/L"), "--part 1", "density"),
        (("--part", "acetone=60 % w/w", "--part", "ethanol=50 % w/w"), "--part", "more than the whole"),
    ],
)
def test_errors_are_located(
    capsys: pytest.CaptureFixture[str], words: tuple[str, ...], place: str, says: str
) -> None:
    run = run_newel(capsys, "screen", *words)
    assert run.status == 1
    assert f"--> {place}\n" in run.out
    assert says in run.out
    data = json.loads(run_newel(capsys, "screen", *words, "--format", "json").out)
    assert data["problems"][0]["file"] == place
    # Nothing that could be read as "no hazards" where there was no screening.
    assert "classes" not in data


def test_a_mixture_that_cannot_be_screened_is_shown_in_its_file(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    make_lab(tmp_path, lab="mixtures: {odd-mix: {title: Odd, not_classified: true}}")
    run = run_newel(capsys, "screen", "odd-mix", "--folder", str(tmp_path))
    assert run.status == 1
    assert "lab.yml:" in run.out
    assert "says nothing of what it is made of" in run.out


def test_what_cannot_run(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert run_newel(capsys, "screen").status == 2
    assert run_newel(capsys, "screen", "copper-mix", "--part", "water=rest").status == 2
    run = run_newel(capsys, "screen", "coper-mix", "--folder", str(DEMO))
    assert (run.status, "did you mean `copper-mix`?" in run.err) == (2, True)
    assert run_newel(capsys, "screen", "x", "--folder", str(tmp_path)).status == 2
