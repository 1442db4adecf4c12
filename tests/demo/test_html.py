"""The HTML of the demo's pages as the standard has it: as it is sent, and as our scripts leave it."""

from pathlib import Path

import pytest
from playwright.sync_api import Browser
from tinyhtml5.parser import HTMLParser

from tests.demo.conformance import faults

# One page of every kind; the parser that tells errors is slow.
KINDS = (
    "", "procedures", "procedures/copper-the-holes", "procedures/copper-the-holes/hazards", "places",
    "places/black", "mixtures/copper-mix", "substances", "substances/sulfuric-acid-96", "hazards",
    "calculators", "calculators/plating_area", "cards", "cards/current", "cards/replace", "glossary",
    "checks", "checks/arrives-wet", "checks/report", "start",
)  # fmt: skip
LIVE = ("procedures/copper-the-holes", "calculators/plating_area", "cards/current")


@pytest.mark.parametrize("at", KINDS)
def test_a_page_is_read_without_an_error(demo_site: Path, at: str) -> None:
    """By a parser that follows the WHATWG algorithm and notes each parse error it meets."""
    parser = HTMLParser()
    parser.parse((demo_site / at / "index.html").read_bytes())
    assert parser.errors == []


def test_no_page_breaks_the_standard(demo_site: Path) -> None:
    found = {path.relative_to(demo_site).as_posix(): _faults(path) for path in demo_site.rglob("index.html")}
    assert len(found) > 300
    assert {path: said[:5] for path, said in found.items() if said} == {}


def _faults(path: Path) -> list[str]:
    html = path.read_text("utf-8")
    said = faults(html)
    if html.find("<meta charset") not in range(1024):
        said.append("the character set is told too late")
    return said


@pytest.mark.browser
def test_scripts_leave_pages_that_keep_the_standard(demo_site: Path, chromium: Browser) -> None:
    page = chromium.new_page()
    for at in LIVE:
        page.goto((demo_site / at / "index.html").as_uri())
        for again in ("whole page", "bench view"):
            html = page.evaluate("document.documentElement.outerHTML")
            assert faults(f"<!doctype html>{html}") == [], (at, again)
            bench = page.get_by_role("button", name="Open bench view")
            if not bench.count():
                break
            bench.click()
    page.close()


PLANTED = {
    "an id twice": ('<p id="a">x</p><p id="a">y</p>', 'the id "a" stands 2 times'),
    "a list of words": ("<ul><p>x</p></ul>", "<p> stands right inside <ul>"),
    "a box in words": ("<span><div>x</div></span>", "<div> stands inside <span>, which holds words only"),
    "a button in a link": ('<a href="x"><button>y</button></a>', "<button> can be used inside"),
    "no alt": ('<p><img src="x"></p>', "<img> has no alt"),
    "a dead reference": ('<p aria-describedby="no">x</p>', 'aria-describedby names "no"'),
    "a dead link": ('<p><a href="#no">x</a></p>', "leads to #no, which is not there"),
    "a named div": ('<div aria-label="x">y</div>', "<div> has a name and no role"),
    "a bare box": ("<p><input></p>", "<input> has no label"),
    "a heading left out": ("<h2>x</h2><h4>y</h4>", "h4 follows h2"),
    "a style": ('<p style="color: red">x</p>', "is obsolete, or styled or scripted"),
    "a ragged table": ("<table><tr><td>a<tr><td>b<td>c</table>", "rows of [1, 2] cells"),
    "no summary": ("<details><p>x</p></details>", "does not begin with its summary"),
}


@pytest.mark.parametrize("name", PLANTED)
def test_a_planted_fault_is_found(name: str) -> None:
    inside, said = PLANTED[name]
    page = "<!doctype html><html lang=en><title>t</title><article><h1>t</h1>{}</article>"
    assert faults(page.format("")) == []
    assert any(said in fault for fault in faults(page.format(inside))), faults(page.format(inside))
