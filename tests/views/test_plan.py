"""The session clock and the class's day of the demo, worked by hand.

The demo's run takes 195.68 min: 88.58 min to the pause behind step 35 (see-black), 107.10 min behind it.
Its stages begin after 18.00 (clean), 48.17 (coat), 88.58 (etch) and 100.30 min (plate). Tuesday's work must
end at 15:45 (16:05 less 20 min), Thursday's at 16:20.
"""

import datetime
from functools import cache
from pathlib import Path

import pytest

from generator.pipeline import check
from generator.planning import points_of_no_return
from generator.reading import open_folder, read_lab
from generator.study import Study
from generator.views.filling.class_day import class_day_view, planned_work
from generator.views.filling.plan import latest_words, plan_view
from generator.views.plan import SessionView
from generator.walk import Ground

ROOT = Path(__file__).parents[2]
TUESDAY = SessionView("Tuesday", 13 * 60 + 10, 16 * 60 + 5, "")


@cache
def study(id: str = "copper-the-holes", folder: str = "procedures") -> Study:
    """One study of a lab."""
    return check(read_lab(open_folder(ROOT / folder, folder)), datetime.date(2026, 11, 25)).studies[id]


def test_points_are_the_stages_that_cannot_be_left() -> None:
    one = study()
    points = points_of_no_return(Ground(one.lab, one.procedure, one.sums), one.walk)
    assert [(p.step, p.pause, round(p.to_pause / 60, 1), round((p.to_end or 0) / 60, 1)) for p in points] == [
        ("rack-white", "see-black", 70.6, 177.7),
        ("fresh-gloves", "see-black", 40.4, 147.5),
        ("set-sum", "", 107.1, 107.1),
        ("rack-hook", "", 95.4, 95.4),
    ]


def test_latest_moments_to_the_pause_and_to_the_end() -> None:
    """15:45 less 70.58 is 14:34.4, less 177.68 is 12:47 and before the session; less 107.10 is 13:57.9."""
    view = plan_view(study())
    assert [(row[0], row[1]) for row in view.latest] == [
        ("Clean and condition", "14:34 if you stop after step 35"),
        ("Coat and fix", "15:04 if you stop after step 35, 13:17 if you go on to the end"),
        ("Micro-etch", "13:57"),
        ("Plate", "14:09"),
    ]
    assert view.latest[0][2] == "15:09 if you stop after step 35, 13:22 if you go on to the end"
    assert view.latest[2][2] == "14:32"


def test_latest_moments_to_the_end_come_in_the_order_of_the_run() -> None:
    one = study()
    points = points_of_no_return(Ground(one.lab, one.procedure, one.sums), one.walk)
    times = [latest_words(SessionView("day", 0, 1440, ""), 0, point.to_end or 0.0) for point in points]
    assert times == sorted(times)


@pytest.mark.parametrize(
    ("seconds", "latest"), [(60.0, "15:44"), (61.0, "15:43"), (155 * 60.0, "13:10"), (9301.0, "")]
)
def test_a_latest_moment_is_never_rounded_up(seconds: float, latest: str) -> None:
    assert latest_words(TUESDAY, 20, seconds) == latest


def test_sessions_say_what_fits_them() -> None:
    """195.68 min do not fit Tuesday's 155, but each stretch does; 16:20 less 195.68 min is 13:04.3."""
    rows = plan_view(study()).rows
    assert [row[1:] for row in rows] == [("with a pause", "14:16"), ("the whole run", "13:04")]


def test_a_run_that_has_to_rest_is_done_in_sittings() -> None:
    """The resin cures for a day: 74 min before it, 127 min behind it; 11:45 or 16:10 less 74 min."""
    one = study("cast-a-block", "tests/labs/resin")
    rows = plan_view(one).rows
    assert {row[1] for row in rows} == {"in 2 sittings"}
    (point, *_) = points_of_no_return(Ground(one.lab, one.procedure, one.sums), one.walk)
    assert point.to_end is None and point.pause == "label"


def test_several_parts_are_told() -> None:
    """The cell holds a part for 55 min; one operator has 102 min of hands a part, and none to spare."""
    several = plan_view(study()).several
    assert several is not None
    one, two = (text for _, text in several.facts)
    assert "when the first is done" in one and "Bottleneck: hands, 1\u00a0h\u00a042\u00a0min a part." in one
    assert "Bottleneck: copper cell, 55\u00a0min a part." in two
    assert several.rows[1] == ("Thursday long lab", "1 part", "2 parts, 75\u00a0min apart")


def test_a_run_without_a_part_has_no_plan_for_several() -> None:
    assert plan_view(study("weekly-look-round")).several is None


def test_the_class_day_keeps_every_place_and_hand_to_one() -> None:
    one = study()
    thursday = one.lab.lab.sessions[1]
    day = class_day_view(one, thursday, operators=2)
    assert day is not None and (len(day.parts), day.spacing) == (2, 75)
    first, second = day.parts
    assert (first.operator, second.operator) == ("Operator 1", "Operator 2")
    assert (second.start.minutes - first.start.minutes, str(first.start)) == (75, "10:00")
    assert first.end.minutes - first.start.minutes == 196
    cell = [
        (w.start.minutes, w.end.minutes) for part in day.parts for w in part.work if w.place == "Copper cell"
    ]
    assert cell[0][1] <= cell[1][0]
    waits = [work.what for work in first.work if not work.hands]
    assert len(waits) == 5 and all(what.startswith("Step ") for what in waits)
    lines = planned_work(day)
    assert len(lines) == len(first.work) * 2 and lines[0].part == "Board 1, operator 1"


def test_a_run_longer_than_the_session_has_no_class_day() -> None:
    one = study()
    assert class_day_view(one, one.lab.lab.sessions[0], operators=2) is None
