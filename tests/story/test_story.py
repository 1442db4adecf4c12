"""From the first day of a lab to a withdrawn procedure: the real commands, real cards, a real browser."""

import re
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.story.one_lab import CARD, ID, OneLab, scanned, served, words_of

POST = ("--approved-by", "instructor")


@pytest.fixture
def lab(tmp_path: Path) -> Iterator[OneLab]:
    """A new lab, its site served as a college would."""
    with served(tmp_path / "lab" / "site") as address:
        OneLab(tmp_path, address).newel("init", "lab")
        lab = OneLab(tmp_path / "lab", address)
        lab.edit("# site_url: https://example.org/lab/", f"site_url: {address}", "mkdocs.yml")
        yield lab


@pytest.fixture
def phone(chromium: Browser) -> Iterator[Page]:
    """A page of a phone's width, on the day of the story; what it complains of fails the test."""
    # The worker that keeps the site on the phone would fetch all of it after each build.
    context = chromium.new_context(viewport={"width": 390, "height": 844}, service_workers="block")
    page = context.new_page()
    page.set_default_timeout(20_000)
    page.clock.set_fixed_time("2026-11-25T22:50:00")
    said: list[str] = []
    page.on("console", lambda one: said.append(one.text) if one.type == "error" else None)
    yield page
    assert [text for text in said if "favicon" not in text] == []
    context.close()


def verdict(phone: Page, address: str) -> str:
    """What the phone answers to a scan."""
    phone.goto(address)
    return phone.locator(".nw-answer").inner_text().replace("\u00a0", " ")


@pytest.mark.browser
def test_a_card_from_its_first_day_to_its_last(lab: OneLab, phone: Page) -> None:
    first = begin(lab, phone)
    second = edit_and_post_again(lab, phone, first)
    replace_the_copies(lab, phone)
    assert verdict(phone, second).startswith("This card is current.")
    unknown_cards(lab, phone, second)
    withdraw(lab, phone, first, second)


def begin(lab: OneLab, phone: Page) -> str:
    """Check, post, print, hang two copies up, scan one."""
    assert lab.newel("check").status == 0
    assert lab.newel("changes").text == f"{ID}: never posted, a draft\n"
    assert "wrote site" in lab.newel("build").text
    assert "DRAFT" in words_of(lab.printed()).upper()
    assert verdict(phone, scanned(lab.printed())).startswith("A draft: do not use this card.")

    lab.edit("takes: 1 min\n        check: the bubble", "takes: 2 min\n        check: the bubble")
    own = lab.newel("post", ID, "--reason", "First issue.", "--approved-by", "technician")
    assert (own.status, "technician is not its approver" in own.text) == (1, True)
    assert "issue 1" in lab.newel("post", ID, "--reason", "First issue.", *POST).text
    assert lab.newel("changes").status == 0
    lab.newel("build")
    for place in ("on the wall over the balance", "inside the cupboard door"):
        assert lab.newel("copies", "add", CARD, "--hangs", place).status == 0
    assert lab.newel("copies").status == 0
    address = scanned(lab.printed())
    assert re.fullmatch(rf"{lab.address}cards/current/index.html\?c={CARD}&i=1&k=\w{{5}}", address)
    assert verdict(phone, address).startswith("This card is current.")
    return address


def edit_and_post_again(lab: OneLab, phone: Page, old: str) -> str:
    """A check gets other words; both copies are wrong, and whoever scans one reads why."""
    lab.edit("the bubble is inside its ring", "the bubble is not outside its ring")
    told = lab.newel("changes").text
    assert "what must be seen “the bubble is inside its ring” → “the bubble is not outside its ring”" in told
    assert "affects balance-card copies 1 and 2" in told
    lab.newel("build")
    assert verdict(phone, old).startswith("This card is current.")  # a draft takes nothing off the wall
    assert "Replace 2 copies:" in lab.newel("post", ID, "--reason", "Clearer.", *POST).text
    lab.newel("build")
    answer = verdict(phone, old)
    assert answer.startswith("Replace this card.")
    assert "It is issue 1; issue 2 is posted now." in answer
    assert "step 1 look-level, Balance: what must be seen" in answer
    phone.goto(f"{lab.address}procedures/{ID}/index.html")
    expect(phone.locator("#look-level .nw-changed")).to_have_text("Changed in issue 2")
    return scanned(lab.printed())


def replace_the_copies(lab: OneLab, phone: Page) -> None:
    """The list is printed and ticked off; then nothing is wrong."""
    assert lab.newel("copies").status == 1
    phone.goto(f"{lab.address}cards/replace/index.html")
    rows = phone.locator(".nw-tick-list > li")
    expect(rows).to_have_count(2)
    expect(rows.first).to_contain_text("inside the cupboard door")
    paper = words_of(phone.pdf(format="A4"))
    assert "Weighing Room, Larkmere Technical College, as of 25 November 2026." in paper
    assert f"newel copies replaced {CARD} 1" in paper
    assert "Done by" in paper
    for number in ("1", "2"):
        assert lab.newel("copies", "replaced", CARD, number).status == 0
    assert lab.newel("copies").status == 0
    lab.newel("build")
    phone.reload()
    expect(phone.get_by_text("No copy on a wall is wrong.")).to_be_visible()


def unknown_cards(lab: OneLab, phone: Page, address: str) -> None:
    """A card that nobody posted, a code that nobody gave, and a code typed by hand."""
    code = address.rpartition("=")[2]
    assert verdict(phone, address.replace("balance-card", "other-card")).startswith("Unknown card")
    assert verdict(phone, address.replace(code, "22222")).startswith("Unknown card")
    phone.goto(f"{lab.address}cards/current/index.html")
    phone.get_by_label("Check code on the card").fill(code.lower())
    phone.get_by_role("button", name="Compare").click()
    expect(phone.locator(".nw-answer .nw-verdict")).to_have_text("This card is current.")


def withdraw(lab: OneLab, phone: Page, first: str, second: str) -> None:
    """Every card says no, the page too, and a copy that is carried as well."""
    assert lab.newel("withdraw", ID, "--because", "The balance is broken.").status == 0
    assert "withdrawn, take it down" in lab.newel("copies").text
    lab.newel("build")
    for address in (first, second):
        answer = verdict(phone, address)
        assert answer.startswith("Withdrawn: do not use this card.")
        assert "The balance is broken." in answer
    phone.goto(f"{lab.address}procedures/{ID}/index.html")
    expect(phone.locator(".nw-banner-withdrawn")).to_contain_text("Withdrawn on 25 November 2026: do not use")
    assert "DO NOT USE" in words_of(lab.printed()).upper()
    lab.newel("build", "--offline")
    carried = (lab.home / "site-offline").as_uri()
    assert verdict(phone, second.replace(lab.address, f"{carried}/")).startswith("Withdrawn")


def test_a_week_later_nobody_has_looked(lab: OneLab) -> None:
    """What a pipeline asks every night: the exit status says whether somebody must walk to a wall."""
    lab.newel("post", ID, "--reason", "First issue.", *POST)
    lab.newel("copies", "add", CARD, "--hangs", "over the balance")
    assert lab.newel("copies", "look-every", "30 days").status == 0
    assert lab.newel("copies").status == 0
    later = replace(lab, day=lab.day + 31 * 86_400)
    seen = later.newel("copies")
    assert (seen.status, "to be looked at" in seen.text) == (1, True)
    assert later.newel("copies", "looked-at", CARD, "1").status == 0
    assert later.newel("copies").status == 0
