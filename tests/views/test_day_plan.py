"""The day plan of a class: against the walk and by hand, on paper, and the same in words on its page."""

import re
from functools import cache

import pypdfium2
import pytest

from generator.outputs.press.document import document_pdf, document_sheets
from generator.outputs.press.drawing import Box
from generator.pipeline.day_plans import DayPlans, set_day_plans
from generator.pipeline.standing import Shown
from generator.study import Study
from generator.units import Clock
from generator.views.day_plan import DayPlanView, LaneView
from generator.views.filling.class_day import MOST_OPERATORS, MOST_PARTS, class_days, planned_work
from generator.views.filling.day_page import day_page_view
from generator.views.filling.day_plan import PlannedWork, class_plan_view, day_plan_view, plan_facts
from generator.views.paper import PaperTable, PaperView
from tests.press.demo_cards import LINE, facts, shown
from tests.press.pdf_reading import overlapping, sheet_letters


def study(id: str) -> Study:
    return next(study for study in shown().studies if study.procedure.id == id)


@cache
def days(id: str) -> tuple[DayPlanView, ...]:
    return class_days(study(id))


def thursday() -> DayPlanView:
    return days(LINE)[-1]


def paper(day: DayPlanView, id: str = LINE) -> PaperView:
    return class_plan_view(study(id), day, planned_work(day), "2026-11-25", "Procedure x", "posted")


def test_the_plan_follows_the_clock() -> None:
    work = (
        PlannedWork(Clock(800), Clock(808), "Board 2", "Soak", "Soak cleaner", hands=False),
        PlannedWork(Clock(790), Clock(798), "Board 1", "Soak", "Soak cleaner"),
    )
    view = day_plan_view(shown().lab, "Thursday long lab", "2026-11-26", work)
    table = next(part for part in view.parts if isinstance(part, PaperTable))
    assert [row[0].lead for row in table.rows] == ["13:10", "13:20"]
    assert [row[2].lead for row in table.rows] == ["Board 1", "Board 2"]
    assert table.rows[1][3].text == "Soak (no hands needed)"
    assert document_pdf(view).startswith(b"%PDF")


def test_the_last_part_ends_before_the_lab_is_packed_up() -> None:
    """By hand: the session ends at 16:40, 20 min of packing up before; a run takes 196 min."""
    day = thursday()
    assert (str(day.start), str(day.pack_up), str(day.end)) == ("10:00", "16:20", "16:40")
    assert str(day.last_start) == "13:04"
    starts = [part.start.minutes for part in day.parts]
    assert starts == [600 + n * day.spacing for n in range(len(starts))]
    assert starts[-1] <= day.last_start.minutes < starts[-1] + day.spacing
    assert all(part.end.minutes <= day.pack_up.minutes for part in day.parts)


def crowded(lane: LaneView, room: int) -> bool:
    """Whether more bars than `room` lie over one another at any time."""
    edges = [edge for bar in lane.bars for edge in ((bar.start + 1e-6, 1), (bar.end - 1e-6, -1))]
    inside = 0
    for _, step in sorted(edges):
        inside += step
        if inside > room:
            return True
    return False


@pytest.mark.parametrize("id", [LINE, "anodise-a-coupon", "cast-a-block", "reflow-a-small-board"])
def test_no_place_and_no_hand_is_wanted_twice(id: str) -> None:
    """Read a second time, off the plan itself: places by their room, hands one part at a time."""
    room = {str(place.title): place.room_for or 1 for place in study(id).lab.places.values()}
    for day in days(id):
        for lane in day.places:
            assert not crowded(lane, room[lane.label.partition("  ")[2]]), (day.session, lane.label)
        for operator in {part.operator for part in day.parts}:
            bars = tuple(
                bar for part in day.parts if part.operator == operator
                for bar in part.lane.bars if bar.kind == "hands"
            )  # fmt: skip
            assert not crowded(LaneView("", bars), 1), (day.session, operator)


def test_a_bar_is_as_long_as_the_step() -> None:
    """By hand from the procedure: 22 min in the oven at place 4, 54 min in the copper cell at place 6."""
    waits = {bar.text: bar.end - bar.start for bar in thursday().parts[0].lane.bars if bar.kind == "wait"}
    assert waits["4"] == pytest.approx(22.0)
    assert waits["6"] == pytest.approx(54.0, abs=0.5)
    assert thursday().parts[0].free == ("11:00 to 11:22", "11:43 to 12:37")


def test_a_run_of_two_days_has_a_plan_for_each() -> None:
    first, second = (day for day in days("cast-a-block") if day.session == "Tuesday short lab")
    assert (first.sitting, first.stop) == ("sitting 1 of 2", "10")
    assert (second.sitting, second.stop) == ("sitting 2 of 2", "")
    steps = study("cast-a-block").procedure.steps
    assert steps[9].pause is not None


def test_who_is_asked_comes_in_the_order_of_the_clock() -> None:
    asked = thursday().asked
    assert [one.at.minutes for one in asked] == sorted(one.at.minutes for one in asked)
    assert {one.role for one in asked} == {"Second person in the room"}
    assert len(asked) == 2 * len(thursday().parts)


def test_no_class_is_larger_than_one_can_watch() -> None:
    for study in shown().studies:
        for day in class_days(study):
            assert len(day.parts) <= MOST_PARTS
            assert len({part.operator for part in day.parts}) <= MOST_OPERATORS
            assert day.more == ("would hold more" in dict(plan_facts(study, day))["Parts"])


def test_the_print_says_all_that_an_instructor_asks() -> None:
    pdf = document_pdf(paper(thursday()))
    document = pypdfium2.PdfDocument(pdf)
    pages = [document[number].get_textpage().get_text_range() for number in range(len(document))]
    assert 1 <= len(pages) <= 3
    text = " ".join(" ".join(pages).replace("\u00a0", " ").split())
    for words in (
        "10:00 to 16:40", "Pack up from 16:20", "3 boards, 75 min apart", "13:04", "15:46", "copper cell",
        "Second person in the room", "pack up", "Board 3", "operator 3", "11:43 to 12:37", "Micro-etch",
        "both answers agree", "6 Copper cell", "Name", "Really at",
    ):  # fmt: skip
        assert words in text, words


@pytest.mark.parametrize("id", [LINE, "cast-a-block"])
def test_nothing_lies_over_anything_or_outside(id: str) -> None:
    for day in days(id):
        view = paper(day, id)
        for number, sheet in enumerate(document_sheets(view)):
            found = sheet_letters(document_pdf(view), number)
            assert min(one.left for one in found) >= 7.2
            assert max(one.right for one in found) <= sheet.width - 7.2
            assert max(one.bottom for one in found) <= sheet.height - 7.2
            assert not list(overlapping(found, 0.12))
            for mark in sheet.marks:
                if isinstance(mark, Box):
                    assert mark.x >= 7.2
                    assert mark.x + mark.width <= sheet.width - 7.2 + 0.1


def test_the_plan_is_the_same_every_time() -> None:
    document_pdf.cache_clear()
    first = document_pdf(paper(thursday()))
    document_pdf.cache_clear()
    assert document_pdf(paper(thursday())) == first


def test_the_page_says_what_the_charts_show() -> None:
    page = day_page_view(study(LINE), days(LINE), (), frozenset(("cards/copper-the-holes/day-plan.pdf",)))
    assert [one.text for one in page.files] == ["cards/copper-the-holes/day-plan.pdf"]
    tables = {table.title: table for table in page.days[-1].tables}
    busy = {row[0].text: row[1].text for row in tables["Which places are busy"].rows}
    assert re.match(r"1: \d\d:\d\d to 12:38; 2: ", busy["6  Copper cell"])
    rows = [[cell.text for cell in row] for row in tables["Who has which part"].rows]
    assert rows[1][:4] == ["Board 2", "Operator 2", "11:15", "14:31"]
    assert len(tables["By the clock"].rows) == len(planned_work(thursday()))


@cache
def plans() -> DayPlans:
    wanted = {LINE, "weekly-look-round", "spill-and-splash"}
    return set_day_plans(
        Shown(shown().lab, tuple(one for one in shown().standings if one.id in wanted)), facts()
    )


def test_a_procedure_without_a_part_has_none() -> None:
    assert set(plans().days) == {LINE, f"{LINE}.second-year"}
    assert {file.path for file in plans().files} == {
        f"cards/{LINE}/day-plan.pdf", f"cards/{LINE}.second-year/day-plan.pdf",
    }  # fmt: skip
    assert not plans().problems
    assert plans().own(study(LINE))
    assert not plans().own(study(f"{LINE}.second-year"))
