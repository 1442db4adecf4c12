"""The lab whose every place for words is hostile: pages, cards, data, search, PDFs, in a real Chromium."""

import io
import json
import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pypdf
import pytest
from playwright.sync_api import Browser, BrowserContext, Page
from selectolax.lexbor import LexborHTMLParser

from generator.outputs.page import join_sections, page_path
from generator.outputs.site import Site
from generator.pipeline.build import build_folder
from generator.publishing.publish import publish
from tests.hostile.doors import DAY
from tests.hostile.spoilt import TEXTS, folder_of, spoil_all
from tests.hostile.taken import taken, text_for

_OURS = ("calculators", "checks", "start")
# Reports of the content policy, and dialogs that a script would open, end up in a list of the page.
_LISTEN = """window.__reports = [];
window.alert = window.confirm = window.prompt = () => window.__reports.push("dialog");
document.addEventListener('securitypolicyviolation', e => window.__reports.push(e.violatedDirective));"""


def harmless(text: str) -> str:
    """Words of the same shape with no sign in them."""
    return re.sub(r"[^\w ]", "z", text)


@cache
def built(hostile: bool) -> Site:
    """The lab's site, with hostile words or with harmless ones in the same places."""
    shape = str if hostile else harmless
    files = spoil_all(taken(), lambda spot, old: f"{old} {shape(text_for(spot))}")
    outcome = build_folder(folder_of(files), DAY, True, "")
    assert outcome.site is not None, [p.message for p in outcome.problems if p.level == "error"]
    return outcome.site


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The hostile site, published."""
    target = tmp_path_factory.mktemp("spoilt") / "site"
    publish(built(hostile=True), target)
    return target


@pytest.fixture
def tab(chromium: Browser) -> Iterator[Page]:
    """A page that listens for what must not happen."""
    context: BrowserContext = chromium.new_context(viewport={"width": 1280, "height": 900})
    context.add_init_script(_LISTEN)
    yield context.new_page()
    context.close()


def skeleton(html: str) -> list[tuple[str, tuple[str, ...]]]:
    """Every element of a page with the names of its attributes, as a browser's parser sees them."""
    tree = LexborHTMLParser(html)
    return [(str(node.tag), tuple(sorted(map(str, node.attributes)))) for node in tree.css("*")]


def test_hostile_words_make_no_other_element_than_harmless_ones() -> None:
    """On every page: the same elements with the same attributes, so that nothing of an author is markup."""
    hostile, plain = ({page.address: page for page in built(each).pages} for each in (True, False))
    assert hostile.keys() == plain.keys()
    for address, page in hostile.items():
        assert skeleton(join_sections(page)) == skeleton(join_sections(plain[address])), address


def test_every_place_is_shown_as_it_was_written() -> None:
    """Each hostile text stands on some page, letter by letter."""
    shown = "".join(LexborHTMLParser(join_sections(page)).text() for page in built(hostile=True).pages)
    squeezed = "".join(shown.split())
    assert [text for text in TEXTS if "".join(text.split()) not in squeezed] == []
    assert "1337" not in squeezed, "7 times 191: a template was worked out"


def test_data_in_pages_and_the_search_index_stay_data(folder: Path) -> None:
    for path in folder.rglob("*.html"):
        for block in LexborHTMLParser(path.read_text("utf-8")).css("script[type='application/json']"):
            json.loads(block.text())
    index = json.loads((folder / "search" / "search_index.json").read_text("utf-8"))
    for entry in index["docs"]:
        for part in (entry["title"], entry["text"], *entry.get("tags", ())):
            assert {node.tag for node in LexborHTMLParser(part).css("body *")} <= {"p", "h1"}, part
    assert json.loads((folder / "newel.webmanifest").read_text("utf-8"))["name"]


@pytest.mark.browser
def test_nothing_runs_and_nothing_is_reported(folder: Path, tab: Page) -> None:
    pages = [page for page in built(hostile=True).pages if page.address.split("/")[0] not in _OURS]
    assert len(pages) > 20
    for page in pages:
        tab.goto((folder / page_path(page.address)).as_uri())
        quiet(tab, page.address)


def quiet(tab: Page, where: str) -> None:
    """Nothing ran, nothing was reported, nothing was put into the page."""
    assert tab.evaluate("[window.__ran === undefined, window.__reports]") == [True, []], where
    put = "[href^='javascript:' i], img[src='x'], svg[onload], [onmouseover]"
    assert tab.locator(put).count() == 0, where
    assert tab.evaluate("getComputedStyle(document.body).display") != "none", where


@pytest.mark.browser
def test_a_search_result_shows_the_text_and_runs_nothing(folder: Path, tab: Page) -> None:
    tab.goto((folder / "index.html").as_uri())
    tab.click(".md-search__input")
    tab.keyboard.type("plate")
    tab.locator(".md-search-result__link").first.wait_for(timeout=15_000)
    quiet(tab, "search")
    assert tab.locator(".md-search-result img, .md-search-result script, .md-search-result math").count() == 0


@pytest.mark.browser
def test_the_answer_to_a_card_takes_its_address_as_words(folder: Path, tab: Page) -> None:
    """Whoever prints a QR code of their own may write anything into it."""
    page = (folder / "cards" / "current" / "index.html").as_uri()
    tab.goto(page)
    for text in TEXTS:
        asked = tab.evaluate("text => new URLSearchParams({c: text, i: text, k: text}).toString()", text)
        for query in (asked, f"c=clean-a-plate/bath-card&i={text}&k={text}"):
            tab.goto(f"{page}?{query}")
            quiet(tab, query)
            assert "do not use" in tab.locator("[data-nw-current]").inner_text().lower()
    for query in ("c=__proto__", "c=constructor", "c=toString&i=1&k=1"):
        tab.goto(f"{page}?{query}")
        quiet(tab, query)
        assert "do not use" in tab.locator("[data-nw-current]").inner_text().lower()


def printed() -> Iterator[tuple[str, str]]:
    for file in built(hostile=True).files:
        if file.path.endswith(".pdf"):
            pages = pypdf.PdfReader(io.BytesIO(file.content)).pages
            yield file.path, "".join("".join(page.extract_text().split()) for page in pages)


def test_a_printed_sheet_shows_what_was_written() -> None:
    found = dict(printed())
    assert len(found) > 8
    card = found["cards/clean-a-plate/bath-card.pdf"]
    assert sum("".join(text.split()) in card for text in TEXTS) >= 4, card
    whole = "".join(found.values())
    assert [text for text in TEXTS if "".join(text.split()) not in whole] == []
    assert "1337" not in whole


def test_no_printed_sheet_holds_a_link_or_an_action_of_the_author() -> None:
    for file in built(hostile=True).files:
        if file.path.endswith(".pdf"):
            for page in pypdf.PdfReader(io.BytesIO(file.content)).pages:
                for note in page.get("/Annots") or ():
                    assert "javascript" not in str(note.get_object()).lower(), file.path
            assert b"/JavaScript" not in file.content and b"/Launch" not in file.content, file.path
        if file.path.endswith(".svg"):
            assert not re.search(rb"<script|\son[a-z]+=|javascript:", file.content), file.path
