"""The order in which a page is heard, tabbed through and hit, for each kind of page."""

from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page

from tests.site.reading_order import reading_order
from tests.site.test_browser import PAGES, PROCEDURE

pytestmark = pytest.mark.browser
GOLDEN = Path(__file__).parent / "reading"
# What the Tab key comes to, in the order of the document.
STOPS = """() => {
  const kinds = "a[href], button, input, select, textarea, summary, [tabindex]";
  return [...document.querySelectorAll("article :is(" + kinds + ")")]
    .filter((one) => one.checkVisibility() && !one.disabled && one.tabIndex >= 0)
    .map((one) => {
      const box = one.getBoundingClientRect();
      const name = (one.getAttribute("aria-label") || one.textContent || one.type || "").trim().slice(0, 40);
      return [name, one.tabIndex, Math.round(box.top), Math.round(box.bottom), Math.round(box.left)];
    });
}"""


@pytest.fixture
def page(chromium: Browser) -> Iterator[Page]:
    """A phone, where everything stands in one column."""
    context = chromium.new_context(viewport={"width": 390, "height": 844}, timezone_id="UTC", locale="en-GB")
    page = context.new_page()
    yield page
    context.close()


@pytest.mark.parametrize("path", PAGES)
def test_a_page_is_heard_in_the_order_of_its_golden_text(page: Page, sample_folder: Path, path: str) -> None:
    """Where a page changed on purpose: delete its text, run the test, and read what it has written anew."""
    page.goto(f"{sample_folder.as_uri()}/{path}")
    heard = reading_order(page)
    golden = GOLDEN / (path.removesuffix("index.html").strip("/").replace("/", ".") or "home")
    golden = golden.with_name(f"{golden.name}.txt")
    if not golden.exists():
        golden.write_text(heard, encoding="utf-8")
        pytest.fail(f"{golden} was missing; it is written: read it before you keep it")
    assert heard.splitlines() == golden.read_text("utf-8").splitlines()


@pytest.mark.parametrize("path", PAGES)
def test_the_tab_key_goes_down_the_page(page: Page, sample_folder: Path, path: str) -> None:
    """WCAG 2.2, 2.4.3: in the order of the document, which on a phone is down, and across a row."""
    page.goto(f"{sample_folder.as_uri()}/{path}")
    stops = page.evaluate(STOPS)
    assert [name for name, index, *_ in stops if index > 0] == []
    for (name, _, top, bottom, left), (next_name, _, next_top, next_bottom, next_left) in pairwise(stops):
        beside = next_top < bottom and top < next_bottom
        # The box to tick stands in the margin beside its sentence and is come to after it.
        is_tick = next_name == "checkbox" and top - next_top < 60
        assert next_top >= top or is_tick or (beside and next_left >= left), (path, name, next_name)


@pytest.mark.parametrize("width", [360, 820])
def test_at_the_bench_everything_is_hit_with_a_knuckle(
    chromium: Browser, sample_folder: Path, width: int
) -> None:
    """44 by 44 CSS pixels (WCAG 2.2, 2.5.5), words in a sentence excepted; what leads on is larger still."""
    page = chromium.new_page(viewport={"width": width, "height": 900})
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    page.get_by_role("button", name="Open bench view").click()
    for _ in range(page.locator(".nw-step").count()):
        start = page.get_by_role("button", name="Start timer")
        if start.count() and start.first.is_visible():
            start.first.click()
        small = page.evaluate("""() => [...document.querySelectorAll("button, input, select, .nw-station, a")]
          .filter((one) => one.checkVisibility() && !one.matches(".md-skip, .nw-term"))
          .filter((one) => one.matches(".nw-station") || !one.closest("p, dd, li:not(.nw-step), h3, footer"))
          .map((one) => (one.type === "checkbox" ? one.closest("label") : one))
          .filter((one) => one.offsetHeight < 44 || one.offsetWidth < 44)
          .map((one) => one.outerHTML.slice(0, 90))""")
        assert small == []
        page.get_by_role("button", name="Done").last.click()
    assert page.get_by_role("button", name="Done").last.evaluate("one => one.offsetHeight") >= 56
    page.close()
