"""Words stay in one piece, and what is read first stands in sight, on a tablet and on a telephone."""

import pytest
from playwright.sync_api import Page

from tests.site.calculator_pages import PROCEDURE, LabSite, address

pytestmark = pytest.mark.browser
BROKEN = """() => [...document.querySelectorAll(".nw-lines dt")].flatMap((label) => {
  const range = document.createRange();
  const text = label.firstChild;
  return [...text.textContent.matchAll(/[^ ]+/g)].filter((word) => {
    range.setStart(text, word.index);
    range.setEnd(text, word.index + word[0].length);
    return new Set([...range.getClientRects()].map((one) => Math.round(one.top))).size > 1;
  }).map((word) => word[0]);
})"""


@pytest.mark.parametrize("width", (360, 820, 1280))
def test_bench_view_breaks_no_label_inside_a_word(page: Page, calculator_site: LabSite, width: int) -> None:
    page.set_viewport_size({"width": width, "height": 900})
    page.goto(address(calculator_site, PROCEDURE))
    page.get_by_role("button", name="Open bench view").click()
    # All steps at once, as the bench view shows each.
    page.evaluate("""() => {
      for (const one of document.querySelectorAll(".nw-stage, .nw-step")) one.classList.add("is-now");
    }""")
    assert page.get_by_text("Meanwhile", exact=True).first.is_visible()
    assert page.evaluate(BROKEN) == []


def test_a_day_by_the_clock_is_read_on_a_telephone_without_reaching_sideways(
    page: Page, calculator_site: LabSite
) -> None:
    """When, who and what are in sight; only where may need a push, and the region scrolls by itself."""
    page.set_viewport_size({"width": 360, "height": 740})
    page.goto(address(calculator_site, f"{PROCEDURE}/day-plan"))
    clocks = page.get_by_role("region", name="By the clock")
    assert clocks.count() > 0
    for clock in clocks.all():
        edge = clock.bounding_box()
        what = clock.get_by_role("columnheader", name="What").bounding_box()
        assert edge and what and what["x"] + what["width"] <= edge["x"] + edge["width"]
