"""A copy to carry: the same bytes each time, nothing else replaced, and all of it works without a network."""

import zipfile
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect

from generator.posting.code import check_code
from generator.problems import NewelError
from generator.publishing.publish import publish
from tests.site import sample_pages
from tests.site.sample_site import sample_site, tiny_site

YOUNG, OLD = "2026-11-26T08:00:00", "2027-01-04T08:00:00"
THEN, NOW, NEVER = (check_code([("etch-in", time)]) for time in ("50 s", "40 s", "30 s"))
CARD = f"cards/current/index.html?c=copper-the-holes/coat-card&i=3&k={NOW}"


def test_the_same_site_gives_the_same_zip(tmp_path: Path) -> None:
    for name in ("one", "two"):
        publish(tiny_site(), tmp_path / name / "site", offline=True)
    one, two = (tmp_path / name / "site.zip" for name in ("one", "two"))
    assert one.read_bytes() == two.read_bytes()
    with zipfile.ZipFile(one) as packed:
        names = packed.namelist()
        assert {entry.date_time for entry in packed.infolist()} == {(2026, 11, 25, 0, 0, 0)}
    assert names == sorted(names)
    assert all(name.startswith("site/") for name in names)
    files = [path for path in (tmp_path / "one" / "site").rglob("*") if path.is_file()]
    assert len(names) == len(files)
    assert not [name for name in names if "service-worker" in name or name.endswith((".map", "404.html"))]


def test_a_zip_that_is_no_copy_of_ours_stays(tmp_path: Path) -> None:
    (tmp_path / "site.zip").write_bytes(b"photos of the summer")
    with pytest.raises(NewelError) as refused:
        publish(tiny_site(), tmp_path / "site", offline=True)
    assert refused.value.id == "strange-folder"
    assert (tmp_path / "site.zip").read_bytes() == b"photos of the summer"
    assert not (tmp_path / "site").exists()


def test_a_copy_of_ours_is_replaced(tmp_path: Path) -> None:
    for name in ("First", "Second"):
        publish(tiny_site(name), tmp_path / "site", offline=True)
    with zipfile.ZipFile(tmp_path / "site.zip") as packed:
        assert b"Second" in packed.read("site/index.html")
        assert b"made on 25 November 2026" in packed.read("site/read-me.txt")


def test_what_a_cut_off_build_left_is_taken_away(tmp_path: Path) -> None:
    left = tmp_path / ".newel" / "site-new-abc" / "site"
    left.mkdir(parents=True)
    publish(tiny_site(), tmp_path / "site")
    assert [path.name for path in (tmp_path / ".newel").iterdir()] == ["site.lock"]


@pytest.fixture(scope="module")
def carried(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample site packed, then taken out of the ZIP in another place."""
    folder = tmp_path_factory.mktemp("carried")
    card = replace(sample_pages.POSTED.cards[0], code=NOW, codes=((THEN, "2"), (NOW, "3")))
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(
            sample_pages, "POSTED", replace(sample_pages.POSTED, built="2026-11-25", cards=(card,))
        )
        publish(sample_site(), folder / "site", offline=True)
    with zipfile.ZipFile(folder / "site.zip") as packed:
        packed.extractall(folder / "stick with a space")
    return folder / "stick with a space" / "site"


@pytest.fixture
def context(chromium: Browser) -> Iterator[BrowserContext]:
    """A window without a network."""
    context = chromium.new_context()
    context.set_default_timeout(5000)
    context.set_offline(True)
    yield context
    context.close()


def opened(context: BrowserContext, folder: Path, path: str, day: str) -> Page:
    """A page of the copy, opened on a day; whatever it complains of fails the test."""
    page = context.new_page()
    page.on("pageerror", lambda error: pytest.fail(str(error)))
    page.on("console", lambda said: pytest.fail(said.text) if said.type == "error" else None)
    page.clock.set_fixed_time(day)
    page.goto(f"{folder.as_uri()}/{path}")
    return page


@pytest.mark.browser
def test_search_and_calculator_work_from_the_folder(context: BrowserContext, carried: Path) -> None:
    page = context.new_page()
    page.goto(f"{carried.as_uri()}/index.html")
    expect(page.get_by_text("made on 25 November 2026")).to_be_visible()
    page.click(".md-search__input")
    page.keyboard.type("H314")
    page.locator(".md-search-result__link").first.click()
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    assert page.url.startswith(f"{carried.as_uri()}/")
    page.goto(f"{carried.as_uri()}/calculators/plating_current/index.html")
    page.get_by_label("Current density").fill("2")
    expect(page.locator(".nw-result")).to_contain_text("A")


@pytest.mark.browser
def test_a_young_copy_vouches_for_a_card_and_an_old_one_does_not(
    context: BrowserContext, carried: Path
) -> None:
    page = opened(context, carried, CARD, YOUNG)
    expect(page.locator(".nw-answer .nw-verdict")).to_have_text("This card is current.")
    expect(page.locator(".nw-copy")).to_contain_text("it does not renew itself")
    page = opened(context, carried, CARD, OLD)
    expect(page.locator(".nw-answer .nw-verdict")).to_have_text("This card was current on 25 November 2026.")
    expect(page.locator(".nw-built")).to_contain_text("This copy of the site is 40 days old")
    expect(page.locator(".nw-copy")).to_contain_text("made 40 days ago")


@pytest.mark.browser
@pytest.mark.parametrize(
    ("typed", "answer"),
    [
        (f" {NOW[:2].lower()}-{NOW[2:]} ", "This card is current."),
        (THEN, "Replace this card."),
        (NEVER, "Unknown card: do not use it."),
        (NOW[1] + NOW[0] + NOW[2:], "This is no check code."),
        ("abc", "This is no check code."),
    ],
)
def test_a_code_can_be_typed(context: BrowserContext, carried: Path, typed: str, answer: str) -> None:
    page = opened(context, carried, "cards/current/index.html", YOUNG)
    verdict = page.locator(".nw-answer .nw-verdict")
    assert verdict.count() == 0
    page.get_by_label("Check code on the card").fill(typed)
    page.keyboard.press("Enter")
    expect(verdict).to_have_text(answer)
