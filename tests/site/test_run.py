"""A run on the page: timers by the wall clock, two windows, undo, record, blocked storage, keyboard alone."""

from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page, ViewportSize, expect

from tests.site.lab_site import write_lab_site

pytestmark = pytest.mark.browser
PROCEDURE = "procedures/copper-the-holes/index.html"
LAB = Path(__file__).parents[2] / "procedures"
BLOCKED = """for (const name of NAMES)
    Storage.prototype[name] = () => { throw new DOMException("full", "QuotaExceededError"); };"""


@pytest.fixture(scope="module")
def lab_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo lab's own copper procedure."""
    folder = tmp_path_factory.mktemp("lab")
    return write_lab_site(LAB, folder, lambda address: address == "procedures/copper-the-holes")[0]


def stand(page: Page) -> float:
    """The wall clock of the page in s."""
    return float(page.evaluate("Date.now()")) / 1000


def left_on(page: Page, step: str) -> float:
    """What a timer says is left, in s."""
    text = page.locator(f'[data-nw-timer="{step}"] .nw-left').text_content() or ""
    seconds = 0.0
    for part in text.removeprefix("−").split(":"):
        seconds = seconds * 60 + float(part)
    return -seconds if text.startswith("−") else seconds


def test_a_whole_run_at_fifty_times_the_speed_keeps_to_the_wall_clock(page: Page, lab_folder: Path) -> None:
    """The demo procedure's own steps; every timer is compared with 50 times what the wall clock moved."""
    page.clock.install(time=1_764_000_000)
    page.goto(f"{lab_folder.as_uri()}/{PROCEDURE}?rehearsal=50")
    page.clock.pause_at(1_764_000_100)
    expect(page.get_by_text("Touch no chemical")).to_be_visible()
    steps = page.eval_on_selector_all("[data-nw-step]", "all => all.map(one => one.id)")
    timed = page.eval_on_selector_all(
        "[data-nw-timer]", "all => all.map(one => [one.dataset.nwTimer, +one.dataset.seconds])"
    )
    assert len(timed) >= 10
    for position, (step, seconds) in enumerate(timed):
        timer = page.locator(f'[data-nw-timer="{step}"]')
        timer.get_by_role("button", name="Start timer").click()
        began = stand(page)
        page.clock.run_for(seconds * 500 / 50)
        if position == 2:
            page.reload()
        page.clock.run_for(250)
        assert left_on(page, step) == pytest.approx(seconds - 50 * (stand(page) - began), abs=14)
        page.clock.fast_forward(int(seconds * 1000 / 50))
        page.clock.run_for(250)
        assert left_on(page, step) == pytest.approx(seconds - 50 * (stand(page) - began), abs=14)
        assert "is-over" in (timer.get_attribute("class") or "")
        timer.get_by_role("button", name="Stop").click()
    for step in steps:
        page.locator(f"#{step} .nw-done input").check()
    expect(page.get_by_text(f"{len(steps)} of {len(steps)} steps done")).to_be_visible()
    page.goto(f"{lab_folder.as_uri()}/{PROCEDURE}")
    expect(page.get_by_text("No step done yet")).to_be_visible()


def test_where_the_window_stands_is_said_in_words_and_by_a_shape(page: Page, sample_folder: Path) -> None:
    page.clock.install(time=1_764_000_000)
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.clock.pause_at(1_764_000_100)
    timer = page.locator('[data-nw-timer="black-in"]')
    timer.get_by_role("button", name="Start timer").click()
    state = timer.locator(".nw-in-window")
    page.clock.run_for(60_000)
    expect(state).to_contain_text("○ Too early")
    page.clock.run_for(301_000)
    expect(state).to_contain_text("● In the window, until")
    timer.get_by_role("button", name="1 min more").click()
    expect(timer).to_have_class("nw-timer")
    page.clock.run_for(300_000)
    expect(state).to_contain_text("✕ Too late since")


def test_what_to_do_first_is_said_before_zero(page: Page, sample_folder: Path) -> None:
    page.clock.install(time=1_764_000_000)
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.clock.pause_at(1_764_000_100)
    timer = page.locator('[data-nw-timer="black-in"]')
    timer.get_by_role("button", name="Start timer").click()
    page.clock.run_for(330_000)
    expect(timer.get_by_role("alert")).to_contain_text("Soon, at step 25. Press the timer top once")
    assert page.title().startswith("00:30 step 25 · ")
    running = page.get_by_role("list", name="Running timers").get_by_role("link")
    expect(running).to_have_text("Step 25 · 00:30")


def test_two_windows_show_one_run(context: BrowserContext, page: Page, sample_folder: Path) -> None:
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    other = context.new_page()
    other.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.locator('[data-nw-timer="black-in"]').get_by_role("button", name="Start timer").click()
    page.locator("#black-in .nw-done input").check()
    expect(other.locator("#black-in .nw-done input")).to_be_checked()
    expect(other.locator('[data-nw-timer="black-in"] .nw-left')).to_be_visible()
    other.locator("#open-3 .nw-done input").check()
    expect(page.get_by_text("2 of 6 steps done")).to_be_visible()


def test_a_clock_put_back_is_told(page: Page, sample_folder: Path) -> None:
    page.clock.install(time=1_764_000_000)
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.locator('[data-nw-timer="black-in"]').get_by_role("button", name="Start timer").click()
    page.clock.set_system_time(1_763_990_000)
    page.clock.run_for(500)
    expect(page.locator(".nw-in-window:visible")).to_contain_text("Go by the clock on the wall")


def test_undo_takes_back_one_step_or_a_whole_start_over(page: Page, sample_folder: Path) -> None:
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.locator("#open-3 .nw-done input").check()
    page.locator("#black-in .nw-done input").check()
    page.get_by_role("button", name="Undo last step").click()
    expect(page.get_by_text("1 of 6 steps done")).to_be_visible()
    expect(page.locator("#black-in .nw-done input")).not_to_be_checked()
    page.get_by_role("button", name="Start over", exact=True).click()
    expect(page.get_by_text("No step done yet")).to_be_visible()
    page.get_by_role("button", name="Undo starting over").click()
    expect(page.locator("#open-3 .nw-done input")).to_be_checked()


def test_the_record_is_saved_as_a_file_and_printed(page: Page, sample_folder: Path) -> None:
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.locator("#black-in .nw-done input").check()
    page.locator("#black-in").get_by_text("I did something different").click()
    page.get_by_label("What I did differently at step 25").fill('=SUM("seven")')
    reading = page.locator("[data-nw-reading] input").first
    reading.fill("0.61")
    reading.blur()
    with page.expect_download() as saved:
        page.get_by_role("button", name="Save run record").click()
    text = saved.value.path().read_text("utf-8-sig")
    assert saved.value.suggested_filename.startswith("copper-the-holes-20")
    assert '"\'=SUM(""seven"")"' in text
    assert "0.61" in text
    assert '"Check code"' in text or "draft, not posted" in text
    page.evaluate(
        "void (window.print = () => { window.printed = document.querySelector('.nw-paper').innerText })"
    )
    page.get_by_role("button", name="Print run record").click()
    page.emulate_media(media="print")
    assert "0.61" in page.evaluate("window.printed")
    assert page.locator(".nw-step:visible").count() == 0
    page.evaluate("dispatchEvent(new Event('afterprint'))")
    assert page.locator(".nw-paper").count() == 0


@pytest.mark.parametrize("names", ['["setItem"]', '["getItem", "setItem", "removeItem"]'])
def test_full_or_blocked_storage_is_told_and_everything_still_works(
    context: BrowserContext, sample_folder: Path, names: str
) -> None:
    """The theme's own scripts complain of blocked storage; what they complain of is not ours to hold."""
    page = context.new_page()
    page.add_init_script(BLOCKED.replace("NAMES", names))
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    expect(page.get_by_text("Nothing is kept on this device")).to_be_visible()
    page.locator("#black-in .nw-done input").check()
    expect(page.get_by_text("1 of 6 steps done")).to_be_visible()
    page.locator('[data-nw-timer="black-in"]').get_by_role("button", name="Start timer").click()
    expect(page.locator('[data-nw-timer="black-in"] .nw-left')).to_be_visible()


def test_a_run_by_keyboard_alone(page: Page, sample_folder: Path) -> None:
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    tab_to(page, "Open bench view")
    page.keyboard.press("Enter")
    for _ in range(2):
        tab_to(page, "Done, next step")
        page.keyboard.press("Enter")
    expect(page.locator("#black-in")).to_be_focused()
    tab_to(page, "Start timer")
    page.keyboard.press("Space")
    expect(page.locator("#black-in .nw-left")).to_be_visible()
    expect(page.locator('[data-nw-timer="black-in"]').get_by_role("button", name="Stop")).to_be_focused()
    page.keyboard.press("ArrowRight")
    expect(page.locator("#black-in")).to_be_hidden()
    page.keyboard.press("ArrowLeft")
    page.keyboard.press("Escape")
    expect(page.get_by_text("2 of 6 steps done")).to_be_visible()


def tab_to(page: Page, name: str) -> None:
    """Press the key Tab until the button of that name has the focus."""
    for _ in range(150):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.textContent") == name:
            return
    pytest.fail(f"the key Tab never comes to {name}")


def test_without_a_script_every_number_of_the_class_stands_there(chromium: Browser, lab_folder: Path) -> None:
    context = chromium.new_context(java_script_enabled=False, viewport={"width": 320, "height": 700})
    page = context.new_page()
    page.goto(f"{lab_folder.as_uri()}/{PROCEDURE}")
    expect(page.locator(".nw-plan table").first).to_be_visible()
    dwells = page.locator(".nw-step .nw-dwell").all_text_contents()
    assert len(dwells) >= 15
    assert all(dwells)
    assert all(page.locator(".nw-answers dd").all_text_contents())
    context.close()


@pytest.mark.parametrize("width", [320, 820])
def test_a_running_timer_covers_nothing_and_scrolls_nothing_sideways(
    page: Page, lab_folder: Path, width: int
) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(f"{lab_folder.as_uri()}/{PROCEDURE}")
    page.locator(".nw-timer button:visible").first.click()
    for name in ("Open bench view", "Leave bench view"):
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        page.get_by_role("button", name=name).click()
    assert page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_while_a_run_goes_on(chromium: Browser, lab_folder: Path, scheme: str) -> None:
    """Rehearsal told, two timers, a step ticked with a note; then the same in bench view."""
    size: ViewportSize = {"width": 820, "height": 1180}
    context = chromium.new_context(color_scheme=scheme, viewport=size)  # type: ignore[arg-type]
    page = context.new_page()
    page.goto(f"{lab_folder.as_uri()}/{PROCEDURE}?rehearsal=50")
    page.locator(".nw-timer button:visible").nth(0).click()
    page.locator(".nw-timer:not(:has(.nw-left:visible)) button:visible").nth(1).click()
    page.locator(".nw-done input").first.check()
    page.get_by_text("I did something different").first.click()
    for view in ("page", "bench"):
        if view == "bench":
            page.get_by_role("button", name="Open bench view").click()
        result = Axe().run(page)
        found = [f"{v['id']}: {v['nodes'][0]['html'][:99]}" for v in result.response["violations"]]
        assert found == [], view
    context.close()
