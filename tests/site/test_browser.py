"""The sample site in a real Chromium: opened from a folder, and from a server under a sub-path."""

import functools
import http.server
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page

from tests.site.calculator_pages import listen

PAGES = (
    "index.html",
    "procedures/copper-the-holes/index.html",
    "procedures/copper-the-holes/hazards/index.html",
    "places/index.html",
    "places/black/index.html",
    "mixtures/copper-mix/index.html",
    "substances/sulfuric-acid-96/index.html",
    "calculators/plating_current/index.html",
    "glossary/index.html",
    "checks/arrives-wet/index.html",
    "checks/report/index.html",
    "cards/index.html",
    "cards/current/index.html",
    "cards/replace/index.html",
)
PROCEDURE = PAGES[1]
pytestmark = pytest.mark.browser


class Quiet(http.server.SimpleHTTPRequestHandler):
    """Serves files and says nothing."""

    def log_message(self, format: str, *args: object) -> None:
        """Keep the test's output clean."""


@pytest.fixture(scope="module")
def server(sample_folder: Path) -> Iterator[str]:
    """The parent of the site served, so that the site stands under a sub-path."""
    handler = functools.partial(Quiet, directory=str(sample_folder.parent))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as running:
        thread = threading.Thread(target=running.serve_forever, daemon=True)
        thread.start()
        yield f"http://127.0.0.1:{running.server_address[1]}/{sample_folder.name}/"
        running.shutdown()
        thread.join()


@pytest.fixture(params=["folder", "server"])
def root(request: pytest.FixtureRequest, sample_folder: Path, server: str) -> str:
    """The site's address, both ways."""
    return f"{sample_folder.as_uri()}/" if request.param == "folder" else server


def open_page(context: BrowserContext, address: str) -> tuple[Page, list[str]]:
    """Open a page; the list fills with what its console complains of."""
    page = context.new_page()
    said = listen(page)
    page.goto(address)
    return page, said


def search_for(page: Page, words: str) -> None:
    """Type into the search as a person does, and wait for what it finds."""
    page.click(".md-search__input")
    page.keyboard.type(words)
    page.wait_for_selector(".md-search-result__link")


def test_no_page_breaks_its_policy_or_asks_elsewhere(context: BrowserContext, root: str) -> None:
    asked: list[str] = []
    context.on("request", lambda request: asked.append(request.url))
    for path in PAGES if root.startswith("file:") else PAGES[:3]:
        page, said = open_page(context, root + path)
        assert page.locator('meta[http-equiv="Content-Security-Policy"]').count() == 1
        assert said == [], path
        page.close()
    assert [url for url in asked if not url.startswith((root, "data:"))] == []


def test_an_inline_script_is_stopped_by_the_policy(context: BrowserContext, root: str) -> None:
    page, said = open_page(context, root + PROCEDURE)
    page.evaluate(
        "document.body.append(Object.assign(document.createElement('script'), {text: 'window.got = 1'}))"
    )
    assert page.evaluate("window.got") is None
    assert "Content Security Policy" in said[0]


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("H314", "procedures/copper-the-holes/index.html"),
        ("7664-93-9", "substances/sulfuric-acid-96/index.html"),
        ("0.1 mol/L", "procedures/copper-the-holes/index.html"),
        ("etch", "glossary/index.html"),
        ("soak time", "glossary/index.html#dwell"),
        ("pale crescent", "procedures/copper-the-holes/index.html"),
    ],
)
def test_the_search_finds_what_a_lab_looks_for(
    context: BrowserContext, root: str, typed: str, found: str
) -> None:
    page, said = open_page(context, root + "places/black/index.html")
    search_for(page, typed)
    hits = page.eval_on_selector_all(".md-search-result__link", "links => links.map(link => link.href)")
    paths = [
        hit.removeprefix(root).split("?")[0] + ("#" + hit.split("#")[1] if "#" in hit else "") for hit in hits
    ]
    assert found in paths
    assert said == []


def test_an_authors_text_is_never_run_by_the_search(context: BrowserContext, root: str) -> None:
    page, said = open_page(context, root + "index.html")
    search_for(page, "graphite")
    assert page.locator(".md-search-result img").count() == 0
    assert said == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing(chromium: Browser, sample_folder: Path, scheme: str) -> None:
    context = chromium.new_context(color_scheme=scheme, viewport={"width": 1280, "height": 900})  # type: ignore[arg-type]
    page = context.new_page()
    for path in PAGES:
        page.goto(f"{sample_folder.as_uri()}/{path}")
        result = Axe().run(page)
        found = [f"{v['id']}: {v['nodes'][0]['html'][:160]}" for v in result.response["violations"]]
        assert found == [], path
    context.close()


def test_no_page_scrolls_sideways(context: BrowserContext, sample_folder: Path) -> None:
    page = context.new_page()
    for path in PAGES:
        page.goto(f"{sample_folder.as_uri()}/{path}")
        for width in (320, 360, 820, 1280):
            page.set_viewport_size({"width": width, "height": 800})
            assert page.evaluate("document.documentElement.scrollWidth") <= width, (path, width)


def test_what_can_be_touched_is_large_enough(chromium: Browser, sample_folder: Path) -> None:
    """WCAG 2.2, success criterion 2.5.8: 24 by 24 CSS pixels, links in a sentence excepted."""
    context = chromium.new_context(viewport={"width": 360, "height": 800})
    page = context.new_page()
    page.goto(f"{sample_folder.as_uri()}/{PROCEDURE}")
    small = page.evaluate(
        """() => [...document.querySelectorAll('article :is(button, input, summary, select, .nw-station)')]
            .map(one => one.type === 'checkbox' ? one.closest('label') : one)
            .filter(one => one.checkVisibility())
            .filter(one => Math.min(one.offsetHeight, one.offsetWidth) < 24)
            .map(one => one.outerHTML.slice(0, 80))"""
    )
    assert small == []
    context.close()


def test_a_copy_on_a_wall_is_read_on_a_telephone(chromium: Browser, sample_folder: Path) -> None:
    """At 360 px a card's name has the whole line, and a screen reader still finds a table of rows."""
    context = chromium.new_context(viewport={"width": 360, "height": 800})
    page, problems = open_page(context, f"{sample_folder.as_uri()}/cards/index.html")
    table = page.get_by_role("table").first
    names = table.get_by_role("rowheader")
    assert names.count() == table.get_by_role("row").count() - 1 > 0
    assert table.get_by_role("columnheader").count() == 4
    for name in names.all():
        box = name.bounding_box()
        assert box is not None and box["width"] >= 300
    region = page.locator(".nw-posted .nw-wide")
    assert region.evaluate("one => one.scrollWidth <= one.clientWidth")
    assert problems == []
    context.close()
