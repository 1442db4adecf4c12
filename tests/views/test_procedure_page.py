"""A procedure's page says what its file says, read off the demo by hand, and what the walk adds to it."""

import datetime
from functools import cache
from pathlib import Path

import pytest

from generator.pipeline import check
from generator.reading import open_folder, read_lab
from generator.study import LabStudy, Study
from generator.sums import Known
from generator.views.filling.home import home_view, places_index
from generator.views.filling.place import place_view
from generator.views.filling.plan import plan_view
from generator.views.filling.procedure import procedure_view
from generator.views.filling.procedure_rows import procedures_index
from generator.views.filling.search_words import search_text
from generator.views.filling.summary import summary_of
from generator.views.filling.words import joined, low, spoken_time, times
from generator.views.procedure import ProcedureView
from generator.views.shown import BadgeView, FactView, LinkView
from generator.views.step import SettingView, StepView

ROOT = Path(__file__).parents[2]
TODAY = datetime.date(2026, 11, 25)
NB = "\N{NO-BREAK SPACE}"
CALL = "Call the duty technician: room B12 or extension 417."


@cache
def demo() -> tuple[LabStudy, dict[str, Study]]:
    """The demo lab and its studies by id."""
    checked = check(read_lab(open_folder(ROOT / "procedures", "procedures")), TODAY)
    assert checked.lab is not None
    return checked.lab, dict(checked.studies)


@cache
def page(id: str = "copper-the-holes") -> ProcedureView:
    """The page of a procedure of the demo, which is the first unless told."""
    formulas = {formula.name: formula for formula in Known().all()}
    return procedure_view(demo()[1][id], formulas)


def step(id: str) -> StepView:
    """One of its steps."""
    return next(one for stage in page().stages for one in stage.steps if one.id == id)


def test_steps_are_numbered_through_all_stages() -> None:
    numbers = [one.number for stage in page().stages for one in stage.steps]
    assert numbers == [str(number) for number in range(1, len(numbers) + 1)]


def test_a_time_stands_with_its_window_its_alarm_and_what_is_first() -> None:
    time = step("black-in").time
    assert time is not None
    assert (time.shown, time.window, time.seconds) == (f"6{NB}min", f"5 to 9{NB}min", 360.0)
    assert (time.timer, time.first) == (
        "Bench timer B",
        "Press the timer top once, then lift the board straight away.",
    )


def test_with_current_on_the_step_says_what_is_first() -> None:
    time = step("copper-in").time
    assert time is not None
    assert time.first == "Current to zero FIRST. Then lift."
    assert (time.shown, time.sum) == (f"54{NB}min", "copper-in.for")
    assert SettingView("Current", f"5.0{NB}A", "copper-in.power") in step("copper-in").settings
    assert SettingView("Never above", f"12{NB}A") in step("copper-in").settings


def test_a_place_is_looked_at_whenever_it_is_opened() -> None:
    opened = step("open-3")
    assert opened.look == f"19 to 26{NB}°C; float between the two notches, stirrer turning"
    assert opened.look_fail is not None
    assert (opened.look_fail.say, opened.look_fail.call) == ("Lid on.", CALL)
    assert step("black-in").look == ""


def test_the_hazard_stands_on_the_step_where_it_bites() -> None:
    (hazard,) = [line for line in step("open-5").lines if line.label == "Hazard"]
    assert hazard.text.startswith("Danger. Causes severe skin burns and eye damage (H314).")
    assert hazard.link == LinkView("Micro-etch bath", "mixtures/etch-mix")
    assert [sign.title for sign in step("fix").hazards] == ["Hot surface"]
    assert not [line for line in step("etch-out").lines if line.label == "Hazard"]


def test_what_follows_a_failed_check_leads_back_to_its_step() -> None:
    fail = step("see-black").fail
    assert fail is not None
    back = step("fresh-gloves").number
    assert fail.redo == LinkView(f"step {back}", "procedures/copper-the-holes", "fresh-gloves")
    assert (fail.at_most, fail.call) == ("once", CALL)


def test_a_mend_is_told_before_the_way_back() -> None:
    fail = step("see-pink").fail
    assert fail is not None
    assert fail.mend == "First: Dry both faces with cool air."


def test_a_time_since_another_step_names_it_and_why() -> None:
    number = step("rinse-5").number
    assert step("copper-in").since == (
        f"up to 8{NB}min after the end of step {number}, because bare copper dulls in air"
    )


def test_states_come_from_the_walk() -> None:
    dry, wet = BadgeView("part", "board dry"), BadgeView("part", "board wet")
    assert dry in step("black-in").badges
    assert wet in step("copper-in").badges
    assert BadgeView("open", f"lid{NB}3{NB}open") in step("black-in").badges
    assert not [one for one in step("close-3").badges if one.kind == "open"]
    assert BadgeView("live", "current on at copper cell") in step("copper-in").badges
    limits = {
        one.id for stage in page().stages for one in stage.steps if any(b.kind == "limit" for b in one.badges)
    }
    assert {"close-5", "tray-5", "see-pink", "copper-in"} <= limits
    assert not limits & {"rinse-5", "power-down"}


def test_readings_carry_unit_and_limit() -> None:
    rows = {row.key: row for row in step("measure").record}
    assert (rows["hole-1"].label, rows["hole-1"].unit, rows["hole-1"].limit) == (
        "Hole 1",
        "mΩ",
        f"up to 0.70{NB}mΩ",
    )
    assert rows["photo"].unit == "picture"


def test_gloves_next_to_the_skin_are_the_fresh_ones() -> None:
    assert [(sign.title, sign.detail) for sign in step("etch-wear").wear] == [
        ("Nitrile gloves", "on, a fresh pair"),
        ("Chemical apron", "on"),
        ("Long chemical gauntlets over nitrile", "on"),
        ("Face shield over goggles", "on"),
    ]


def test_the_page_names_roles_and_never_the_person() -> None:
    lab, _ = demo()
    people = [role.now for role in lab.lab.roles.values() if role.now]
    assert people
    text = repr(page()) + repr(home_view(lab, map(summary_of, demo()[1].values())))
    assert not [name for name in people if name in text]


def test_it_is_found_by_statement_cas_number_and_symptom() -> None:
    study = demo()[1]["copper-the-holes"]
    text = search_text(study)
    assert "H314" in text
    assert "7664-93-9" in text
    assert "pale patch or pale crescent on a hole wall" in text
    assert "H314" in study.used_codes()


def test_the_clock_holds_every_step_and_adds_up_to_the_walk() -> None:
    study = demo()[1]["copper-the-holes"]
    plan = plan_view(study)
    assert [one.id for one in plan.steps] == [str(moment.step.id) for moment in study.walk.straight]
    total = study.walk.straight[-1].after.clock.shortest / 60
    assert sum(one.minutes for one in plan.steps) == pytest.approx(total)
    assert [one.id for one in plan.steps if one.pause] == ["see-black"]
    assert [one.id for one in plan.steps if one.sum] == ["copper-in"]


def test_the_job_lists_inner_sums_first() -> None:
    job = page().job
    assert job is not None
    keys = [one.key for one in job.sums]
    assert keys.index("job.area") < keys.index("copper-in.power")
    area = next(one for one in job.sums if one.key == "copper-in.power")
    assert ("area", "sum:job.area") in area.sources
    assert ("density", "box:density") in area.sources


def test_a_place_leads_to_its_steps_once_for_each_procedure() -> None:
    lab, studies = demo()
    places = [dict(summary_of(study).places) for study in studies.values()]
    view = place_view(lab, "black", tuple(here["black"] for here in places if "black" in here))
    mine = [link for link in view.steps if link.address == "procedures/copper-the-holes"]
    assert len(mine) == 1
    assert mine[0].anchor == "open-3"
    assert FactView("The part comes in", "dry") in view.facts
    assert FactView("May carry in", "nothing") in view.facts


def test_a_bath_page_names_all_that_is_worn_there_and_not_only_what_it_adds() -> None:
    """Goggles are put on at the door, and a card for the micro-etch shows them too."""
    lab, _ = demo()
    worn = {sign.title: sign.detail for sign in place_view(lab, "etch").wear}
    assert worn["Indirect-vent splash goggles"] == "all the time"
    assert {"Face shield over goggles", "Long chemical gauntlets over nitrile", "Chemical apron"} < set(worn)
    assert not place_view(lab, "log-desk").wear


def test_a_wait_that_has_to_be_taken_stands_beside_the_time_of_the_work() -> None:
    """52 min of work would read as one afternoon, and the resin sets for 24 h to 14 days after step 15."""
    view = page("section-a-plated-hole")
    rest = FactView("Has to rest", f"24{NB}h to 14{NB}days after step{NB}15, not counted here")
    assert rest in view.facts and FactView("Whole run", f"52{NB}min", sum="plan.total") in view.facts
    assert not any(fact.label == "Has to rest" for fact in page().facts), "that pause may be left out"


def test_indexes_grow_with_the_procedures_and_not_with_the_places_they_use() -> None:
    lab, studies = demo()
    found = tuple(studies.values())
    index = procedures_index(lab, tuple(map(summary_of, found)))
    rows = [row for group in index.groups if group.anchor != "by_symptom" for row in group.rows]
    seen = [row for group in index.groups if group.anchor == "by_symptom" for row in group.rows]
    assert len(seen) == sum(len(one.procedure.you_may_see) for one in found if "." not in one.procedure.id)
    assert sum(row.link.address.startswith("procedures/") for row in rows) == len(found)
    numbers = [row.number for row in places_index(lab).groups[0].rows]
    assert numbers == sorted(numbers, key=int)


def test_words() -> None:
    assert (low("Duty technician"), low("pH meter"), low("UV lamp")) == (
        "duty technician",
        "pH meter",
        "UV lamp",
    )
    assert (joined("abc"), joined("a"), joined("")) == ("a, b and c", "a", "")
    assert (times(None), times(2), times(3)) == ("once", "at most twice", "at most 3 times")
    assert (spoken_time(45), spoken_time(750), spoken_time(7500)) == (
        f"45{NB}s",
        f"12{NB}min",
        f"2{NB}h{NB}5{NB}min",
    )


def test_what_is_made_up_is_said_to_be_made_here_where_a_bath_of_it_stands_elsewhere() -> None:
    formulas = {formula.name: formula for formula in Known().all()}

    def into(procedure: str, id: str) -> list[str]:
        view = procedure_view(demo()[1][procedure], formulas)
        found = next(one for stage in view.stages for one in stage.steps if one.id == id)
        return [row.shown for row in found.settings if row.label == "Into"]

    # Acid that goes into the mixture in the hood must not be read as acid for the bath at its station.
    assert into("make-up-the-copper-bath", "water-first") == ["Acid copper bath, made here"]
    assert into("titrate-the-copper-bath", "titrate-1") == ["Copper flask"]
