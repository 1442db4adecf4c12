"""A lab whose free texts are all hostile, published and opened in a real Chromium, and its PDFs."""

import datetime
import io
from pathlib import Path

import pypdf
import pytest
from playwright.sync_api import Browser

from generator.outputs.page import page_path
from generator.outputs.site import Site
from generator.pipeline import build_site
from generator.publishing import publish
from tests.hostile.spoilt import TEXTS, write_spoilt

LAB = Path(__file__).parents[1] / "labs" / "minimum"
_OURS = ("calculators", "checks", "reference")
# Reports of the content policy, and dialogs that a script would open, end up in a list of the page.
_LISTEN = """window.__reports = [];
document.addEventListener('securitypolicyviolation', e => window.__reports.push(e.violatedDirective));"""


@pytest.fixture(scope="module")
def spoilt(tmp_path_factory: pytest.TempPathFactory) -> tuple[Site, Path]:
    """The site in memory and its folder."""
    home = tmp_path_factory.mktemp("spoilt")
    outcome = build_site(write_spoilt(LAB, home / "lab"), datetime.date(2026, 11, 25), draft=True)
    assert outcome.site is not None, outcome.problems
    publish(outcome.site, home / "site")
    return outcome.site, home / "site"


@pytest.mark.browser
def test_nothing_runs_and_nothing_is_reported(spoilt: tuple[Site, Path], chromium: Browser) -> None:
    site, folder = spoilt
    pages = [page for page in site.pages if page.address.split("/")[0] not in _OURS]
    context = chromium.new_context()
    context.add_init_script(_LISTEN)
    tab = context.new_page()
    seen = ""
    for page in pages:
        tab.goto((folder / page_path(page.address)).as_uri())
        assert tab.evaluate("[window.__ran === undefined, window.__reports]") == [True, []], page.address
        assert tab.locator("[href^='javascript:' i], article img[src='x']").count() == 0, page.address
        seen += tab.locator("article").inner_text()
    context.close()
    assert all(text in seen for text in TEXTS), "each stands on a page as it was written"


@pytest.mark.browser
def test_a_search_result_shows_the_text_and_runs_nothing(
    spoilt: tuple[Site, Path], chromium: Browser
) -> None:
    context = chromium.new_context(viewport={"width": 1280, "height": 900})
    context.add_init_script(_LISTEN)
    tab = context.new_page()
    tab.goto((spoilt[1] / "index.html").as_uri())
    tab.click(".md-search__input")
    tab.keyboard.type("fabric")
    tab.locator(".md-search-result__link").first.wait_for(timeout=15_000)
    assert tab.evaluate("[window.__ran === undefined, window.__reports]") == [True, []]
    assert tab.locator(".md-search-result img, .md-search-result script").count() == 0
    context.close()


def test_a_printed_sheet_shows_what_was_written(spoilt: tuple[Site, Path]) -> None:
    printed = "".join(
        page.extract_text()
        for file in spoilt[0].files
        if file.path.endswith(".pdf")
        for page in pypdf.PdfReader(io.BytesIO(file.content)).pages
    )
    squeezed = "".join(printed.split())
    assert any("".join(text.split()) in squeezed for text in TEXTS)
    assert "1337" not in squeezed, "7 times 191: a template was worked out"
