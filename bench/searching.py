"""Search on a page just opened: from the first key to the first result, in Chromium, from a folder."""

import shutil
import time
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Browser, Error, sync_playwright

from bench.building import index_size
from bench.measuring import Times
from bench.rows import Row, not_measured, shown
from tests.conftest import QUIET_FLAGS

_WHAT = "search: from the first key to the first result, wall"
_GOAL = "<= 0.5 s"


def search_rows(sites: dict[int, Path], word: str, runs: int = 5) -> Iterator[Row]:
    """Wall time at each size; a fresh browser profile for each run, so that nothing is kept."""
    path = shutil.which("chromium") or shutil.which("chromium-browser")
    for count, site in sites.items():
        if path is None or not (site / "index.html").is_file():
            yield not_measured(_WHAT, count, "no Chromium, or no site")
            continue
        try:
            with sync_playwright() as playwright:
                browser = playwright.chromium.launch(executable_path=path, args=list(QUIET_FLAGS))
                times = Times(tuple(_first_result(browser, site, word) for _ in range(runs)))
                browser.close()
        except Error as bad:
            yield not_measured(_WHAT, count, str(bad).splitlines()[0][:100])
            continue
        size = index_size(site)
        goal = _GOAL if count == 1000 else ""
        spread = f"{times.spread:.0%}"
        yield Row(_WHAT, count, runs, shown(times.median), f"index {size:.2f} MB", "", spread, goal)


def _first_result(browser: Browser, site: Path, word: str) -> float:
    context = browser.new_context()
    page = context.new_page()
    page.goto((site / "index.html").resolve().as_uri())
    page.wait_for_load_state("load")
    start = time.perf_counter()
    page.locator("[data-md-component=search-query]").press_sequentially(word)
    page.wait_for_selector(".md-search-result__link", timeout=60_000)
    spent = time.perf_counter() - start
    context.close()
    return spent
