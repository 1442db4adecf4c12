"""The demo's index cut into parts finds what the one in one piece finds, from a folder and from a server."""

import functools
import http.server
import re
import shutil
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext

from generator.publishing.search_files import write_index
from tests.demo.test_demo_site import _listen

SOUGHT = ("H314", "7664-93-9", "grey smear", "0.1 mol/L", 'micro-etch "rinse" -nickel')
_ARTICLE = """links => links.map(link => [
    link.getAttribute("href").replace(/^.*\\/(one|parts)\\//, ""), link.innerHTML])"""
_SCORE = re.compile(r'data-md-score="([\d.]+)"')
pytestmark = pytest.mark.browser


class _Quiet(http.server.SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: object) -> None:
        """Keep the test's output clean."""


@pytest.fixture(scope="module")
def both(demo_site: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the site twice: its index in one piece, and in parts."""
    home = tmp_path_factory.mktemp("both")
    for name, above in (("one", 10**9), ("parts", 0)):
        shutil.copytree(demo_site, home / name, ignore=shutil.ignore_patterns("*.pdf"))
        index = (demo_site / "search" / "search_index.json").read_text(encoding="utf-8")
        write_index(home / name / "search", index, above)
    assert len(list((home / "parts" / "search").rglob("*.js"))) > 5
    return home


@pytest.fixture(params=["folder", "server"])
def root(request: pytest.FixtureRequest, both: Path) -> Iterator[str]:
    """Its address, both ways."""
    if request.param == "folder":
        yield both.as_uri()
        return
    handler = functools.partial(_Quiet, directory=str(both))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as running:
        thread = threading.Thread(target=running.serve_forever, daemon=True)
        thread.start()
        yield f"http://127.0.0.1:{running.server_address[1]}"
        running.shutdown()
        thread.join()


def _found(context: BrowserContext, address: str, words: str) -> tuple[str, list[list[str]]]:
    """What is read aloud, and where each result leads and how it is drawn."""
    page = context.new_page()
    said = _listen(page)
    page.goto(f"{address}/index.html")
    box = page.locator("[data-md-component=search-query]")
    box.fill(words)  # at once, so that no result of half a word comes between
    box.dispatch_event("keyup")
    page.wait_for_selector(".md-search-result__link", timeout=20_000)
    told = page.locator(".md-search-result__meta").inner_text()
    links = page.locator(".md-search-result__link").evaluate_all(_ARTICLE)
    assert said == [], words
    page.close()
    return told, links


def _drawn(links: list[list[str]]) -> list[tuple[str, str]]:
    """Where results lead and how they are drawn, without their scores."""
    return [(href, _SCORE.sub("", html)) for href, html in links]


def _scores(links: list[list[str]]) -> list[float]:
    return [float(_SCORE.findall(html)[0]) for _, html in links]


def test_an_index_in_parts_finds_and_shows_the_same(chromium: Browser, root: str) -> None:
    context = chromium.new_context(viewport={"width": 1280, "height": 900}, service_workers="block")
    try:
        for words in SOUGHT:
            told, shown = _found(context, f"{root}/one", words)
            told_too, shown_too = _found(context, f"{root}/parts", words)
            assert told_too == told, words
            assert _drawn(shown_too[:2]) == _drawn(shown[:2]), words  # address, marks and missing words
            # Added up in another order before they are rounded to hundredths.
            assert _scores(shown_too[:2]) == pytest.approx(_scores(shown[:2]), rel=0, abs=0.011), words
            # Of two entries at one place the theme weighs the last alone, so the order behind may differ.
            assert {href for href, _ in shown_too} == {href for href, _ in shown}, words
    finally:
        context.close()
