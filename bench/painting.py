"""Edit to pixels: a file is saved, and the open page in Chromium has painted the new words."""

import shutil
import time
from collections.abc import Callable, Iterator

from playwright.sync_api import Page, sync_playwright

from tests.conftest import QUIET_FLAGS

_LONGEST_MS = 120_000
# The second frame after the words stand in the page begins once the first, with them in it, has been drawn.
# Both ends are read off the machine's own clock, so that they can be subtracted; a browser gives whole ms.
_WATCH = """([line, words]) => {
  window.benchPainted = new Promise(done => {
    const watch = new MutationObserver(() => {
      const found = document.querySelector(line);
      if (!found || !found.textContent.includes(words)) return;
      watch.disconnect();
      requestAnimationFrame(() => requestAnimationFrame(() => done(Date.now() / 1000)));
    });
    watch.observe(document.body, {childList: true, subtree: true, characterData: true});
  });
}"""
_PAINTED = """limit => Promise.race([
  window.benchPainted, new Promise((_, no) => setTimeout(no, limit, "the page did not follow")),
])"""
_IN_SIGHT = """line => {
  const box = line.getBoundingClientRect();
  return line.checkVisibility() && box.height > 0 && box.top < innerHeight && box.bottom > 0;
}"""


def chromium_path() -> str | None:
    """The system's Chromium, None where there is none."""
    return shutil.which("chromium") or shutil.which("chromium-browser")


def painted_edits(
    browser: str, address: str, line: str, save: Callable[[str], None], runs: int
) -> Iterator[float]:
    """Seconds from the save to the painted words: `runs` in one open page, after one that does not count.

    `save` writes words into the file; `line`, a CSS selector, finds where they shall then stand. Raises
    playwright's Error where the page does not follow within two minutes, RuntimeError for words out of sight.
    """
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=browser, args=list(QUIET_FLAGS))
        page = chromium.new_page()
        page.set_default_timeout(_LONGEST_MS)
        with page.expect_response(lambda answer: "/_newel/news" in answer.url):
            page.goto(address)
        page.locator(line).scroll_into_view_if_needed()
        time.sleep(1.0)  # The first news tells only which version is shown; it has to have come.
        for turn in range(runs + 1):
            spent = _painted(page, line, save, f"Lid off and aside, turn {turn}.")
            if turn:
                yield spent
        chromium.close()


def _painted(page: Page, line: str, save: Callable[[str], None], words: str) -> float:
    page.evaluate(_WATCH, [line, words])
    start = time.time()
    save(words)
    end: float = page.evaluate(_PAINTED, _LONGEST_MS)
    if not page.locator(line).evaluate(_IN_SIGHT):
        raise RuntimeError("the words are in the page and out of sight, so that nothing was painted")
    return end - start
