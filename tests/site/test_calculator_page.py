"""A calculator used by hand: refusals, units, turning round, taking along, keyboard, touch, screen reader."""

import re

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page, expect

from tests.site.calculator_pages import (
    COPPER,
    PROCEDURE,
    LabSite,
    address,
    answer_of,
    box,
    listen,
    plain,
    refusal_of,
)

pytestmark = pytest.mark.browser


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "a number is missing"),
        ("abc", "“abc” is no number"),
        ("-5", "must be 0.01 to 1000 µm"),
        ("0", "must be 0.01 to 1000 µm"),
        ("1e999", "too large for any bench"),
        ("Infinity", "is no number"),
        ("NaN", "is no number"),
        ("1" * 400, "too large for any bench"),
        ("22,5", "write the number with a point, such as 22.5"),
        ("1.2.3", "is no number"),
        ("22 A", "“A” is no unit for this; write it in µm or mm or mil"),
        ("<img src=x onerror=alert(1)>", "is no number"),
    ],
)
def test_what_cannot_be_is_refused_in_a_sentence(
    shared_page: Page, calculator_site: LabSite, text: str, says: str
) -> None:
    page = shared_page
    if "plating_time" not in page.url:
        page.goto(address(calculator_site, "calculators/plating_time"))
    box(page, COPPER).fill(text)
    assert answer_of(page) == "no answer"
    assert says in refusal_of(page)
    body = page.locator("article").inner_text()
    assert not re.search(r"NaN|undefined|Infinity\b(?!”)", body.replace(text or "–", ""))
    assert box(page, COPPER).get_attribute("aria-invalid") == "true"
    note = page.locator(f"#{box(page, COPPER).get_attribute('aria-describedby')}")
    assert says in plain(note.text_content())


def test_a_unit_typed_behind_the_number_is_understood(page: Page, calculator_site: LabSite) -> None:
    page.goto(address(calculator_site, "calculators/plating_time"))
    right = answer_of(page)
    for text in ("0.022 mm", "22µm", "22 um", "22 μm"):
        box(page, COPPER).fill(text)
        assert answer_of(page) == right, text
    box(page, COPPER).fill("1 mil")
    box(page, COPPER).blur()
    expect(box(page, COPPER)).to_have_value("1")
    expect(page.get_by_label(f"Unit of {COPPER}")).to_have_value("mil")
    assert answer_of(page) == "62.5 min"


def test_units_are_remembered_and_a_browser_that_keeps_nothing_still_answers(
    context: BrowserContext, calculator_site: LabSite
) -> None:
    page = context.new_page()
    page.goto(address(calculator_site, "calculators/plating_time"))
    page.get_by_label(f"Unit of {COPPER}").select_option("mil")
    page.get_by_label("Answer in").select_option("h")
    shown = answer_of(page), box(page, COPPER).input_value()
    page.reload()
    assert (answer_of(page), box(page, COPPER).input_value()) == shown
    page.goto(address(calculator_site, "calculators/drill_size"))
    expect(page.get_by_label(f"Unit of {COPPER}")).to_have_value("mil")
    refusing = context.new_page()
    said = listen(refusing)
    refusing.add_init_script(
        "Object.defineProperty(globalThis, 'localStorage', { get() { throw new Error('kept from it'); } })"
    )
    refusing.goto(address(calculator_site, "calculators/plating_time"))
    refusing.get_by_label("Answer in").select_option("h")
    assert answer_of(refusing) == "0.902 h"
    assert [words for words in said if "kept from it" not in words] == []


def test_any_input_can_be_worked_out(page: Page, calculator_site: LabSite) -> None:
    """Put back, the answer gives the number that it came from: 22 µm, and 54.132387 min."""
    page.goto(address(calculator_site, "calculators/plating_time"))
    page.get_by_label("Work out").select_option("copper")
    assert "no answer" in answer_of(page)
    box(page, "Time with current on").fill("54.132387030080444")
    assert answer_of(page) == "22 µm"
    expect(box(page, COPPER)).to_be_hidden()
    page.get_by_label("Work out").select_option("efficiency")
    box(page, "Time with current on").fill("30")
    assert "must be 1 to 100 %" in refusal_of(page)


def test_the_answer_goes_along_as_text_and_as_a_link(page: Page, calculator_site: LabSite) -> None:
    page.add_init_script("Object.defineProperty(navigator, 'clipboard', { value: undefined })")
    page.goto(address(calculator_site, "calculators/plating_area"))
    page.get_by_role("button", name="Add a row").click()
    box(page, "How many of these").last.fill("12")
    box(page, "Drilled diameter").last.fill("0.5 mm")
    page.get_by_role("button", name="Copy the answer").click()
    text = page.get_by_label("Text to copy").input_value()
    assert text.startswith(
        f"Area to be plated. Area that is plated: {page.locator('.nw-result').text_content()}"
    )
    assert "Length of the board (length): 140 mm" in text
    assert "(holes): 180 x 0.9 mm, 26 x 1.3 mm, 12 x 0.5 mm" in text
    assert re.search(r"Formula plating_area, issue [0-9A-F]{6}, page of 25 November 2026\.", text)
    assert re.search(r"Worked out \d{4}-\d\d-\d\d \d\d:\d\d\.", text)
    right = answer_of(page)
    page.get_by_role("button", name="Copy a link").click()
    link = page.get_by_label("Text to copy").input_value()
    page.goto("about:blank")
    page.goto(link)
    assert answer_of(page) == right
    expect(box(page, "Drilled diameter")).to_have_count(3)


def test_by_keyboard_alone(page: Page, calculator_site: LabSite) -> None:
    page.goto(address(calculator_site, "calculators/plating_area"))
    press = page.keyboard.press
    page.locator(".nw-calculator select").first.focus()
    press("Tab")
    assert page.evaluate("document.activeElement.value") == "140"
    press("Control+a")
    page.keyboard.type("100")
    press("Tab")
    press("ArrowDown")
    first = page.evaluate("document.activeElement.value")
    press("Tab")
    assert first != "mm"
    status = page.locator(".nw-calculator [role=status]")
    expect(status).to_contain_text(answer_of(page).split()[0])
    focus_by_tab(page, "Add a row")
    press("Enter")
    expect(page.locator(".nw-row")).to_have_count(3)
    assert answer_of(page) == "no answer"
    page.keyboard.type("4")
    press("Tab")
    page.keyboard.type("1")
    assert answer_of(page) != "no answer"
    focus_by_tab(page, "Remove")
    press("Enter")
    expect(page.locator(".nw-row")).to_have_count(2)
    assert page.evaluate("document.activeElement.textContent") == "Add a row"
    focus_by_tab(page, "Back to the first numbers")
    press("Enter")
    assert answer_of(page) == "2.57 dm²"


def focus_by_tab(page: Page, text: str) -> None:
    for _ in range(40):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.textContent") == text:
            return
    raise AssertionError(f"no way to {text} by the Tab key")


def test_by_touch_at_320_pixels(chromium: Browser, calculator_site: LabSite) -> None:
    """WCAG 2.2: 1.4.10 no scrolling sideways at 320 CSS pixels, 2.5.8 targets of 24 by 24."""
    context = chromium.new_context(viewport={"width": 320, "height": 640}, has_touch=True, is_mobile=True)
    page = context.new_page()
    for name in ("plating_area", "holes_to_sample", "drill_size", "rinse_ratio"):
        page.goto(address(calculator_site, f"calculators/{name}"))
        page.locator(".nw-turned summary").tap() if page.locator(".nw-turned").count() else None
        assert page.evaluate("document.documentElement.scrollWidth") <= 320, name
        small = page.evaluate(
            """() => [...document.querySelectorAll('article :is(button, input, summary, select)')]
                .filter(one => one.checkVisibility() && Math.min(one.offsetHeight, one.offsetWidth) < 24)
                .map(one => one.outerHTML.slice(0, 80))"""
        )
        assert small == [], name
    page.goto(address(calculator_site, "calculators/plating_area"))
    page.get_by_role("button", name="Remove this row").first.tap()
    expect(page.locator(".nw-row")).to_have_count(1)
    context.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(chromium: Browser, calculator_site: LabSite, scheme: str) -> None:
    context = chromium.new_context(color_scheme=scheme, viewport={"width": 1280, "height": 900})  # type: ignore[arg-type]
    page = context.new_page()
    pages = (("calculators/plating_area", "Length of the board", "body"), (PROCEDURE, COPPER, ".nw-job"))
    for at, name, part in pages:
        page.goto(address(calculator_site, at))
        box(page, name).fill("1,5")
        for summary in page.locator(".nw-turned summary").all():
            summary.click()
        result = Axe().run(page, context=part)
        found = [f"{v['id']}: {v['nodes'][0]['html'][:160]}" for v in result.response["violations"]]
        assert found == [], at
    context.close()
