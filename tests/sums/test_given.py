"""`{formula, given}`: inputs for one value alone, and a name under `given` that no formula asks for."""

import datetime
from pathlib import Path

import pytest

from generator.pipeline import Checked, check
from generator.reading import open_folder, read_lab
from tests.checks.cases import Case, write_lab

TODAY = datetime.date(2026, 11, 25)


def checked(folder: Path, job: str) -> Checked:
    """The base of the cases with a job of its own."""
    write_lab(Case("", "", {"procedure": f"job: {job}\n"}), folder)
    return check(read_lab(open_folder(folder, "procedures")), TODAY)


def test_what_is_given_counts_for_this_value_alone(tmp_path: Path) -> None:
    job = (
        "{target: 15 g/L, bath_volume: 18 L, soda: {formula: make_up_solid}, "
        "half: {formula: make_up_solid, given: {bath_volume: 9 L}}, again: {formula: make_up_solid}}"
    )
    sums = checked(tmp_path / "procedures", job).studies["clean-a-plate"].sums.by_key
    # c V: 15 g/L x 18 L = 270 g, and 15 g/L x 9 L = 135 g
    answers = {key: sums[f"job.{key}"].answer.to("g").number for key in ("soda", "half", "again")}
    assert answers == pytest.approx({"soda": 270, "half": 135, "again": 270})
    assert {given.name: given.origin for given in sums["job.half"].inputs} == {
        "target": "job",
        "bath_volume": "step",
    }


def test_a_mistyped_input_is_told_where_it_stands(tmp_path: Path) -> None:
    job = "{target: 15 g/L, bath_volume: 18 L, half: {formula: make_up_solid, given: {bath_volumme: 9 L}}}"
    found = checked(tmp_path / "procedures", job)
    (problem,) = found.problems
    line = (tmp_path / "procedures" / "clean-a-plate.yml").read_text().split("\n")[problem.where.line - 1]
    assert problem.rule == "unknown-name" and problem.fix == "did you mean `bath_volume`?"
    assert line[problem.where.column - 1 :].startswith("bath_volumme")
    assert "job.half" not in found.studies["clean-a-plate"].sums.by_key
