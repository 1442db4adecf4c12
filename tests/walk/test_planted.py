"""An author's mistakes, planted in the demo procedure, are each caught by their rule, and by little else."""

from pathlib import Path

import pytest

from generator.problems import Level
from tests.walk.planting import ID, Planted, check_data, demo, grave, plant, read_planted

HERE = Path(__file__).parent
PLANTED = read_planted(HERE / "planted.cases")
VARIANTS = read_planted(HERE / "variants.cases")
MOST = 3


def test_the_demo_walks_clean_through_all_its_loops() -> None:
    checked = check_data(*demo())
    assert [f"{p.where} {p.rule} {p.message}" for p in grave(checked)] == []
    walk = checked.studies[ID].walk
    assert walk.finished and len(walk.straight) == 61
    assert "after see-pink failed once" in walk.paths and "after a pause behind see-black" in walk.paths


@pytest.mark.parametrize("planted", PLANTED, ids=lambda planted: planted.title)
def test_a_planted_mistake_is_named(planted: Planted) -> None:
    found = grave(check_data(*plant(planted), id=planted.id))
    told = [f"{p.rule} @{p.step}: {p.message}" for p in found]
    hits = [p for p in found if p.rule in planted.rules and planted.step in ("", p.step)]
    assert hits, told
    assert len(found) <= MOST, told


@pytest.mark.parametrize("title", ["no unit", "a comma for a point", "volume for a time"])
def test_a_time_that_cannot_be_read_is_not_walked_as_none(title: str) -> None:
    [planted] = (one for one in PLANTED if one.title == title)
    assert [p.rule for p in grave(check_data(*plant(planted)))] == ["unit-missing"]


@pytest.mark.parametrize("variant", VARIANTS, ids=lambda variant: variant.title)
def test_a_correct_variant_stays_clean(variant: Planted) -> None:
    found = grave(check_data(*plant(variant)))
    assert [f"{p.rule} @{p.step}: {p.message}" for p in found] == []


def test_there_are_enough_of_them() -> None:
    assert len(PLANTED) >= 60 and len(VARIANTS) >= 3


def test_every_path_of_a_problem_is_a_path_of_the_walk() -> None:
    for planted in PLANTED:
        checked = check_data(*plant(planted), id=planted.id)
        paths = {"", *(checked.studies[planted.id].walk.paths if planted.id in checked.studies else ())}
        assert {p.path for p in checked.problems if p.level is Level.ERROR} <= paths
