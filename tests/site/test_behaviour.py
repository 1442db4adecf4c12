"""What the scripts do: ticks, timers, session clock, bench view, calculators, current cards."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

pytestmark = pytest.mark.browser
PROCEDURE = "procedures/copper-the-holes/index.html"


@pytest.fixture
def page(chromium: Browser) -> Iterator[Page]:
    """A window whose clock the test moves."""
    context = chromium.new_context(viewport={"width": 1280, "height": 900})
    context.set_default_timeout(5000)
    page = context.new_page()
    said: list[str] = []
    page.on("pageerror", lambda error: said.append(str(error)))
    yield page
    assert said == []
    context.close()


def test_check_off_outlives_a_reload_and_can_be_put_back(page: Page, sample_folder: Path) -> None:
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.locator("#black-in .nw-done input").check()
    page.get_by_label("Second person").check()
    page.reload()
    expect(page.locator("#black-in .nw-done input")).to_be_checked()
    expect(page.get_by_label("Second person")).to_be_checked()
    expect(page.get_by_text("1 of 6 steps done")).to_be_visible()
    page.get_by_role("button", name="Start over").click()
    expect(page.get_by_text("No step done yet")).to_be_visible()


def test_a_timer_outlives_a_reload_and_says_first_what_to_do(page: Page, sample_folder: Path) -> None:
    page.clock.install(time=1_764_000_000)
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.clock.pause_at(1_764_000_100)
    timer = page.locator('[data-nw-timer="black-in"]')
    timer.get_by_role("button", name="Start timer").click()
    page.clock.run_for(60_000)
    expect(timer.locator(".nw-left")).to_have_text("05:00")
    expect(timer.locator(".nw-first")).to_contain_text("Press the timer top once")
    page.reload()
    expect(timer.locator(".nw-left")).to_have_text("05:00")
    page.clock.run_for(301_000)
    expect(timer).to_have_class("nw-timer is-over")
    expect(timer.get_by_role("alert")).to_contain_text("Time is over. Press the timer top once")
    timer.get_by_role("button", name="Stop").click()
    expect(timer.get_by_role("button", name="Start timer")).to_be_visible()


def test_the_session_clock_answers(page: Page, sample_folder: Path) -> None:
    """Steps of 2, 46, 3, 54.1 and 170 min: 275.1 min in all; Thursday from 10:00, work ends at 16:20.

    A latest moment is never rounded up: 16:20 less 275.1 min is 11:44.9, less 224.1 min 12:35.9.
    """
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    plan = page.locator(".nw-plan")
    plan.locator("select").select_option(label="Thursday long lab, 10:00 to 16:40")
    expect(plan.locator(".nw-verdict")).to_contain_text("Fits")
    rows = plan.locator(".nw-times > div").all_text_contents()
    assert rows == [
        "Finish14:35",
        "Latest start for the whole run11:44",
        "May pause (dry in a labelled bag)10:51",
        "Into the copper cell, latest moment12:35",
    ]
    plan.get_by_label("I start at").fill("12:30")
    expect(plan.locator(".nw-verdict")).to_contain_text("must end at 16:20. Start by 11:44")


def test_bench_view_shows_one_step_and_goes_on(page: Page, sample_folder: Path) -> None:
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.get_by_role("button", name="Open bench view").click()
    expect(page.locator(".nw-step:visible")).to_have_count(1)
    expect(page.locator("#fresh-gloves")).to_be_focused()
    page.get_by_role("button", name="Done, next step").click()
    expect(page.locator("#open-3")).to_be_visible()
    size = page.get_by_role("button", name="Done, next step").bounding_box()
    assert size is not None
    assert size["height"] >= 64
    page.keyboard.press("Escape")
    expect(page.locator(".nw-step:visible")).to_have_count(6)
    expect(page.locator("#fresh-gloves .nw-done input")).to_be_checked()


def test_a_symptom_is_found_by_its_words(page: Page, sample_folder: Path) -> None:
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.get_by_label("What do you see?").fill("crescent pale")
    expect(page.locator("#symptom-list > li:visible")).to_have_count(1)
    expect(page.get_by_text("1 of 2")).to_be_visible()


def test_a_calculator_answers_refuses_and_converts(page: Page, sample_folder: Path) -> None:
    """1.9 A/dm2 x (2.57 + 0.06) dm2 = 4.997 A, the worked number of the invented job."""
    page.goto(f"{sample_folder.as_uri()}/calculators/plating_current/index.html")
    result = page.locator(".nw-result")
    expect(result).to_have_text("5.0\u00a0A")
    page.get_by_label("Answer in").select_option(label="mA")
    expect(result).to_have_text("4997\u00a0mA")
    page.get_by_label("Unit of Area to be plated").select_option(label="cm²")
    expect(page.get_by_label("Area to be plated A")).to_have_value("257")
    expect(result).to_have_text("4997\u00a0mA")
    density = page.get_by_label("Current density j")
    density.fill("1,9")
    expect(page.locator(".nw-wrong")).to_contain_text("write the number with a point, such as 1.9")
    expect(result).to_have_text("no answer")
    density.fill("20")
    expect(page.locator(".nw-wrong")).to_have_text("Current density: must be 0.1 to 10 A/dm².")
    density.fill("5")
    expect(page.locator(".nw-wrong")).to_contain_text("is usually 1 to 3 A/dm²")


@pytest.mark.parametrize(
    ("query", "answer"),
    [
        ("?c=copper-the-holes/coat-card&i=3&k=K7Q2-M9XA", "This card is current."),
        ("?c=copper-the-holes/coat-card&i=2&k=OLD1-OLD1", "Replace this card."),
        ("?c=copper-the-holes/coat-card&i=3&k=OLD1-OLD1", "Replace this card."),
        ("?c=copper-the-holes/coat-card&i=3&k=OTHER", "Unknown card: do not use it."),
        ("?c=copper-the-holes/gone&i=1&k=X", "Unknown card: do not use it."),
        ("?c=copper-the-holes/coat-card&i=draft&k=K7Q2-M9XA", "A draft: do not use this card."),
        ("?c=copper-the-holes/coat-card&i=1&k=k7q2m9xa", "This card is current."),
    ],
)
def test_a_card_is_compared_with_what_is_posted(
    page: Page, sample_folder: Path, query: str, answer: str
) -> None:
    page.goto(f"{sample_folder.as_uri()}/cards/current/index.html{query}")
    expect(page.locator(".nw-current .nw-verdict")).to_have_text(answer)
    if "i=2" in query:
        expect(page.get_by_text("Micro-etch 50 s, now 40 s")).to_be_visible()
