"""Learning at home: questions, rehearsal, slip, what changed since, and words explained in place."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from generator.outputs.explained import Explained

pytestmark = pytest.mark.browser
PROCEDURE = "procedures/copper-the-holes/index.html"


@pytest.fixture
def page(chromium: Browser, sample_folder: Path) -> Iterator[Page]:
    """The page of the sample procedure on a new device; it may complain of nothing and ask nobody."""
    context = chromium.new_context(viewport={"width": 1280, "height": 900})
    context.set_default_timeout(5000)
    page = context.new_page()
    said: list[str] = []
    page.on("pageerror", lambda error: said.append(str(error)))
    page.on("request", lambda request: None if request.url.startswith("file:") else said.append(request.url))
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    yield page
    assert said == []
    context.close()


def test_the_slip_waits_for_every_question_and_a_whole_rehearsal(page: Page) -> None:
    slip = page.get_by_role("button", name="Print completion slip")
    expect(slip).to_be_disabled()
    expect(page.get_by_text("1 of 1 questions to answer; 6 steps to rehearse.")).to_be_visible()
    asked = page.locator("[data-nw-question]")
    asked.locator("summary").click()
    expect(asked.get_by_text("Both spoil the graphite.")).to_be_visible()
    asked.get_by_role("button", name="I knew it").click()
    page.get_by_role("link", name="Rehearse, 50 times as fast").click()
    expect(page.get_by_text("Touch no chemical")).to_be_visible()
    for box in page.locator(".nw-done input").all():
        box.check()
    page.get_by_role("link", name="Leave the rehearsal").first.click()
    expect(page.get_by_text("No step done yet")).to_be_visible()
    page.evaluate("void (window.print = () => {})")
    expect(slip).to_be_enabled()
    slip.click()
    page.emulate_media(media="print")
    text = page.locator(".nw-paper").inner_text()
    assert "K7Q2-M9XA" in text
    assert "It is no sign-off" in text
    assert "Line check-off" in text


def test_what_changed_since_is_asked_once_for_each_change(page: Page) -> None:
    page.evaluate("localStorage.setItem('newel.learnt.copper-the-holes', '{\"trained\": 2, \"known\": {}}')")
    page.reload()
    told = page.locator(".nw-banner", has_text="Changed since you trained")
    expect(told).to_contain_text("You learnt issue 2; issue 3 is posted.")
    told.get_by_text("Issue 3 changed time. What is it now?").click()
    expect(told.get_by_text("Micro-etch: 50 s, now 40 s")).to_be_visible()
    told.get_by_role("button", name="I knew it").click()
    page.reload()
    expect(page.get_by_text("No step done yet")).to_be_visible()
    expect(told).to_have_count(0)


def test_a_word_is_explained_where_it_is_first_used_and_by_keyboard(page: Page) -> None:
    words = page.locator("button.nw-term", has_text="board")
    expect(words).to_have_count(1)
    words.focus()
    page.keyboard.press("Enter")
    meaning = page.get_by_role("note")
    expect(meaning).to_contain_text("The <b>panel</b> with its two copper faces.")
    page.keyboard.press("Escape")
    expect(meaning).to_be_hidden()


def test_words_are_explained_once_and_stay_text() -> None:
    terms = Explained((("Dwell", "time in a bath"), ("dwell time", "longer <word>")))
    first = terms.explain("A dwell time & two dwells")
    assert first.count("<button") == 2
    assert "&amp; two" in first
    assert "<button" not in terms.explain("One dwell")
    assert [word for _, word, _ in terms.met] == ["dwell time", "Dwell"]


def test_holding_a_board_is_no_hold() -> None:
    """A verb's own meaning belongs to the steps that do it."""
    terms = Explained((("hold", "stop until the person has agreed"),), frozenset({"hold", "check"}))
    assert "<button" not in terms.explain("Hold the board over the light.", "Check")
    assert "<button" in terms.explain("Hold for the technician.", "Hold")


def test_a_symptom_found_by_the_search_leads_to_its_step(page: Page) -> None:
    page.goto(page.url.replace("procedures/copper-the-holes/", ""))
    page.click(".md-search__input")
    page.keyboard.type("current jumps")
    page.wait_for_selector(".md-search-result__link")
    links = page.eval_on_selector_all(".md-search-result__link", "all => all.map(one => one.href)")
    assert any(link.endswith("#copper-in") for link in links)
