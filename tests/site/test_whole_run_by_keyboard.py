"""The whole demo procedure in bench view by keyboard alone, fifty times as fast, on phone and tablet."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.site.lab_site import write_lab_site

pytestmark = pytest.mark.browser
LAB = Path(__file__).parents[2] / "procedures"
PROCEDURE = "procedures/copper-the-holes"
NOW = ".nw-step.is-now"


@pytest.fixture(scope="module")
def lab_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo lab's own copper procedure."""
    return write_lab_site(LAB, tmp_path_factory.mktemp("lab"), lambda address: address == PROCEDURE)[0]


def press_to(page: Page, name: str) -> bool:
    """Press the key Tab until the button of that name has the focus; False where it never comes to it."""
    for _ in range(40):
        if page.evaluate("document.activeElement.textContent.trim()") == name:
            return True
        page.keyboard.press("Tab")
    return False


def enter_bench(page: Page) -> None:
    """By the Tab key past everything that stands before it."""
    for _ in range(60):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.textContent") == "Open bench view":
            return page.keyboard.press("Enter")
    raise AssertionError("the key Tab never comes to the bench view")


@pytest.mark.parametrize(("width", "height"), [(320, 640), (820, 1180)])
def test_the_whole_run(chromium: Browser, lab_folder: Path, width: int, height: int) -> None:
    """A reload and a sleep in the middle; the step at hand, the ticks and a running timer are there again."""
    page = chromium.new_page(viewport={"width": width, "height": height})
    page.clock.install(time=1_764_000_000)
    page.goto(f"{lab_folder.as_uri()}/{PROCEDURE}/index.html?rehearsal=50")
    page.clock.pause_at(1_764_000_100)
    enter_bench(page)
    steps = page.eval_on_selector_all("[data-nw-step]", "all => all.map(one => one.id)")
    slept = False
    for count, step in enumerate(steps):
        assert page.locator(NOW).get_attribute("id") == step
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        timer = page.locator(f'[data-nw-timer="{step}"]')
        if timer.count() and count % 3 == 0:
            assert press_to(page, "Start timer"), step
            page.keyboard.press("Space")
            if not slept:
                slept = True
                page.reload()
                page.clock.run_for(250)
                enter_bench(page)
                assert page.locator(NOW).get_attribute("id") == step
            seconds = float(timer.get_attribute("data-seconds") or 0)
            page.clock.fast_forward(int(seconds * 1000 / 50) + 500)
            page.clock.run_for(250)
            assert "is-over" in (timer.get_attribute("class") or ""), step
            assert press_to(page, "Stop"), step
            page.keyboard.press("Enter")
        assert press_to(page, "Done" if count == len(steps) - 1 else "Done, next step"), step
        page.keyboard.press("Enter")
    assert slept
    page.keyboard.press("Escape")
    expect(page.get_by_text(f"{len(steps)} of {len(steps)} steps done")).to_be_visible()
    page.close()
