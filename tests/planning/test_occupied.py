"""What the demo's run keeps busy, read off its file by hand, in minutes from the start."""

import datetime
from functools import cache
from pathlib import Path

import pytest

from generator.pipeline import check
from generator.planning import HANDS, PlannedRun, bottleneck, load_of, planned_run, run_stretches
from generator.reading import open_folder, read_lab
from generator.study import Study
from generator.walk import Ground, stretches

ROOT = Path(__file__).parents[2]


@cache
def study(folder: str = "procedures", id: str = "copper-the-holes") -> Study:
    """One study of a lab."""
    return check(read_lab(open_folder(ROOT / folder, folder)), datetime.date(2026, 11, 25)).studies[id]


def run(one: Study) -> PlannedRun:
    """Its whole run."""
    return planned_run(Ground(one.lab, one.procedure, one.sums), one.walk.straight)


def minutes(found: PlannedRun, what: str) -> list[tuple[float, float]]:
    """When something is busy."""
    return [(round(start / 60, 2), round(end / 60, 2)) for start, end in found.times(what)]


def test_hands_are_free_only_while_the_student_may_stay_near() -> None:
    """Soak 8, conditioner 3.5, graphite 6, oven 22, plating 54.1 min: all else is hands or waiting here."""
    found = run(study())
    free = [after - end for (_, end), (after, _) in zip(
        minutes(found, HANDS), minutes(found, HANDS)[1:], strict=False)]  # fmt: skip
    assert free == pytest.approx([8, 3.5, 6, 22, 54.1], abs=0.05)


def test_a_bath_is_taken_from_going_in_to_coming_out() -> None:
    """Soak 8 min and 20 s of dripping; oven 22 min and 30 s; copper cell 54.1 min, 30 s and 30 s."""
    found = run(study())
    (soak,), (oven,), (copper,) = (found.times(what) for what in ("soak", "oven", "copper"))
    lasts = [end - start for start, end in (soak, oven, copper)]
    assert lasts == pytest.approx([500, 1350, 54.1 * 60 + 60], abs=4)


def test_the_tray_is_taken_from_the_first_spray_until_it_is_emptied() -> None:
    """90 + 60 + 210 + 20 + 15 + 120 + 60 s from rinse-1 to tray-2; then 100 + 15 + 60; then 120 + 60."""
    lasts = [round((end - start) * 60) for start, end in minutes(run(study()), "di")]
    assert lasts == pytest.approx([575, 175, 180], abs=2)


def test_a_shared_machine_is_taken_while_it_is_held() -> None:
    """Freed at the end of the fifth step (4 + 1 + 3 + 2 + 3 min), held again from its booking to the end."""
    first, last = minutes(run(study()), "drill")
    assert first == (0, 13)
    assert last[1] - last[0] == pytest.approx(11)


def test_under_current_a_cell_takes_one_part() -> None:
    found = run(study())
    assert (found.room["soak"], found.room["copper"]) == (2, 1)
    assert bottleneck(found, 2)[0] == "copper" and bottleneck(found, 1)[0] == HANDS
    assert load_of(found, "soak") == pytest.approx(250)


def test_waits_may_be_drawn_out_to_the_window_but_not_a_time_that_a_sum_gives() -> None:
    """Soak up to 10 min, conditioner 5, graphite 9, oven 40, a pause of up to 3 days; not the copper cell."""
    rests = [rest.most for rest in run(study()).rests]
    assert rests == [120, 90, 180, 1080, 3 * 86_400]


@pytest.mark.parametrize(
    ("folder", "id"),
    [
        ("procedures", "copper-the-holes"),
        ("tests/labs/resin", "cast-a-block"),
        ("tests/labs/soil", "liquid-limit"),
    ],
)
def test_stretches_are_those_of_the_walk(folder: str, id: str) -> None:
    one = study(folder, id)
    found = run_stretches(Ground(one.lab, one.procedure, one.sums), one.walk)
    known = stretches(one.walk)
    assert [piece.seconds for piece in found] == pytest.approx([stretch.seconds for stretch in known])


def test_a_clock_is_kept_between_the_same_moments() -> None:
    """From the end of the spray to the cell there are 5 min 15 s, and 8 min at most."""
    found = run(study())
    (clock,) = found.since
    assert found.at(clock.end) - found.at(clock.start) == pytest.approx(315)
    assert (clock.least, clock.most) == (0, 480)
