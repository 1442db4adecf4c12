"""The demo lab and five rooms of other trades read whole, and have no warning but those they accept."""

import datetime
from pathlib import Path

import pytest

from generator.model import Procedure
from generator.pipeline import check
from generator.problems import Level
from generator.reading import LabRead, find_folder, open_folder, read_lab
from generator.units import Quantity
from tests.checks.cases import Case, write_lab

ROOT = Path(__file__).parents[2]
DEMO = ROOT / "procedures"
SMALL = ROOT / "tests" / "labs"
DAY = datetime.date(2026, 11, 25)

ACCEPTED = {
    "minimum": set(),
    "resin": {("hot-unattended", "oven-in")},
    "soil": {("hot-unattended", "oven-in")},
    "furnace": {("hot-unattended", "temper-in")},
    "wheels": set(),
}
DEMO_ACCEPTED = {
    ("keep-apart", ""),
    ("gloves-on-clean-thing", "see-dry"),
    ("gloves-on-clean-thing", "see-black"),
    ("gloves-on-clean-thing", "see-pink"),
    ("air-not-cleared", "etch-in"),
    ("two-actions", "copper-in"),
}


def read(folder: Path) -> LabRead:
    return read_lab(open_folder(find_folder(folder), folder.name))


def demo() -> Procedure:
    return read(DEMO).procedures["copper-the-holes"].procedure


@pytest.mark.parametrize("name", sorted(ACCEPTED))
def test_a_small_lab_reads_without_a_problem(name: str) -> None:
    found = read(SMALL / name)
    assert found.problems == ()
    assert found.lab is not None
    assert len(found.procedures) == 1


@pytest.mark.parametrize("name", sorted(ACCEPTED))
def test_a_small_lab_has_the_warnings_that_it_accepts_and_no_others(name: str) -> None:
    checked = check(read(SMALL / name), DAY)
    loud = [p for p in checked.problems if p.level in (Level.ERROR, Level.WARNING)]
    assert [f"{p.where} {p.rule} {p.message}" for p in loud] == []
    assert {(p.rule, p.step) for p in checked.problems if p.level is Level.ACCEPTED} == ACCEPTED[name]


def test_the_demo_has_the_warnings_that_it_accepts_and_no_others() -> None:
    checked = check(read(DEMO), DAY)
    loud = [p for p in checked.problems if p.level in (Level.ERROR, Level.WARNING)]
    assert [f"{p.where} {p.rule} {p.message}" for p in loud] == []
    accepted = [(p.rule, p.step) for p in checked.problems if p.level is Level.ACCEPTED]
    assert set(accepted) == DEMO_ACCEPTED


def test_the_demo_is_read_as_it_is_written() -> None:
    found = read(DEMO)
    assert found.problems == ()
    procedure = found.procedures["copper-the-holes"]
    assert set(procedure.classes) == {"second-year"}
    assert set(procedure.languages) == {"es"}
    assert [str(stage.stage) for stage in procedure.procedure.stages] == [
        "receive", "clean", "coat", "etch", "plate", "finish",
    ]  # fmt: skip
    assert {"clear-and-plugged.svg", "wall-even-and-patchy.svg"} <= found.folder.pictures


def test_every_sentence_of_the_demo_stands_where_it_says() -> None:
    lines = (DEMO / "copper-the-holes.yml").read_text(encoding="utf-8").splitlines()
    for step in demo().steps:
        where = step.say.where
        assert lines[where.line - 1][where.column - 1 :].lstrip("\"'").startswith(step.say[:20])
        assert lines[step.spot("id").line - 1][step.spot("id").column - 1 :].startswith(step.id)


def test_a_class_brings_its_own_cards_and_keeps_the_others(tmp_path: Path) -> None:
    side = (
        "class_of: clean-a-plate\ncards:\n"
        "  - {id: wall, title: Wall card for small plates, read_from: 1 m, stages: [clean]}\n"
        "  - {id: extra, title: Extra card, read_from: 1 m, stages: [clean]}\n"
    )
    cards = (
        "cards: [{id: wall, title: Wall card, read_from: 2 m, stages: [clean]}, "
        "{id: door, title: Door card, read_from: 2 m, show: [wear]}]"
    )
    case = Case("", "", {"procedure": cards}, {"clean-a-plate.small.yml": side.encode()})
    write_lab(case, tmp_path / "procedures")
    found = read_lab(open_folder(tmp_path / "procedures", "procedures")).procedures["clean-a-plate"]
    own = [(str(card.id), str(card.title)) for card in found.classes["small"].cards]
    assert own == [("wall", "Wall card for small plates"), ("door", "Door card"), ("extra", "Extra card")]
    assert [str(card.title) for card in found.procedure.cards] == ["Wall card", "Door card"]


def test_a_class_lays_its_values_over_its_procedure() -> None:
    found = read(DEMO).procedures["copper-the-holes"]
    base, second = found.procedure, found.classes["second-year"]
    assert second.id == "copper-the-holes.second-year"
    assert second.title == "Second-year boards"
    assert second.job["length"] == Quantity(100, "mm")
    assert second.job["board_thickness"] == base.job["board_thickness"]
    steps = {str(step.id): step for step in second.steps}
    assert steps["soak-in"].for_ == Quantity(7, "min")
    assert steps["fix"].set == {"program": "3", "temperature": "72 degC"}
    assert [step.id for step in second.steps] == [step.id for step in base.steps]
    assert [step.say for step in second.steps] == [step.say for step in base.steps]
    assert steps["soak-in"].spot("for").file.endswith("second-year.yml")
    assert steps["soak-in"].spot("say").file.endswith("copper-the-holes.yml")


def test_a_mistyped_field_is_told_once_in_whichever_file_of_the_lab(tmp_path: Path) -> None:
    write_lab(Case("", "", {}), tmp_path / "made")
    (tmp_path / "made" / "lab").mkdir()
    (tmp_path / "made" / "lab.yml").rename(tmp_path / "made" / "lab" / "lab.yml")
    (tmp_path / "made" / "lab" / "more.yml").write_text(
        "residues:\n  grit: {titel: Grit}\n", encoding="utf-8"
    )
    found = check(read(tmp_path / "made"), datetime.date(2026, 11, 25)).problems
    assert [(problem.rule, problem.follows) for problem in found if problem.level is Level.ERROR] == [
        ("unknown-key", 1)
    ]
