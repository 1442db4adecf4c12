"""The demo lab laid out by each engine: the same pages, ids, links, navigation, search and calculators."""

import datetime
import functools
import http.server
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Literal
from urllib.parse import urldefrag, urlencode, urljoin

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page
from selectolax.lexbor import LexborHTMLParser

from generator.formulas.library import find_formula
from generator.outputs.page import Page as OurPage
from generator.outputs.page import Section, page_anchors
from generator.outputs.site import Site
from generator.pipeline import build_site
from generator.problems import NewelError
from generator.publishing.file_engines import FILE_ENGINES, run_file_engine
from generator.publishing.publish import publish
from tests.site.calculator_pages import answer_of
from tests.site.sample_site import tiny_site

ROOT = Path(__file__).parents[2]
ENGINES = ("mkdocs", *FILE_ENGINES)
SUMS: tuple[tuple[str, dict[str, str]], ...] = (
    ("plating_current", {"area": "3.1 dm2", "contact_area": "6 cm2", "density": "1.7 A/dm2"}),
    ("plating_time", {"copper": "18 um", "density": "2.1 A/dm2", "efficiency": "96 %"}),
    ("letter_height", {"distance": "2.5 m"}),
    ("dilution", {"wanted_molarity": "0.2 mol/L", "wanted_volume": "3 L", "stock_molarity": "1.5 mol/L"}),
    ("evaporation_top_up", {"surface": "14 dm2", "drop": "9 mm"}),
)
LISTEN = """window.__reports = [];
document.addEventListener("securitypolicyviolation", (e) => window.__reports.push(e.violatedDirective));"""
SEEN = ("index.html", "procedures/copper-the-holes/index.html", "calculators/plating_current/index.html")
SCHEMES: tuple[Literal["light"], Literal["dark"]] = ("light", "dark")
NASTY = "<img src=x onerror='window.__ran=1'> & *b* {{ 7*191 }} \"q\""


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> tuple[Site, dict[str, Path]]:
    """The demo lab's site in memory, and the folder that each engine wrote."""
    site = build_site(ROOT / "procedures", datetime.date(2026, 11, 25)).site
    assert site is not None
    folders = {}
    for engine in ENGINES:
        folders[engine] = tmp_path_factory.mktemp(engine) / "site"
        publish(site, folders[engine], ROOT / "mkdocs.yml", engine=engine)
    return site, folders


def html_files(folder: Path) -> set[str]:
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*.html")} - {"404.html"}


def part(folder: Path, name: str, selector: str) -> LexborHTMLParser:
    found = LexborHTMLParser((folder / name).read_text("utf-8")).css_first(selector)
    assert found is not None and found.html, (folder, name, selector)
    return LexborHTMLParser(found.html)


def links(folder: Path, name: str, selector: str = "article") -> list[str]:
    """Where links lead, without the anchors that a theme sets beside headings."""
    found = part(folder, name, selector).css("a[href]:not(.headerlink)")
    return sorted(urljoin(f"/{name}", node.attributes["href"] or "") for node in found)


def lands(folder: Path, link: str) -> bool:
    """Whether a link within the site leads to a file that is there."""
    path = urldefrag(link)[0]
    return not path.startswith("/") or (folder / path.lstrip("/")).exists()


@pytest.mark.parametrize("engine", FILE_ENGINES)
def test_each_engine_shows_the_same_pages(demo: tuple[Site, dict[str, Path]], engine: str) -> None:
    site, folders = demo
    one, other = folders["mkdocs"], folders[engine]
    pages = {f"{page.address}/index.html".lstrip("/"): page for page in site.pages}
    assert set(pages) <= html_files(one) == html_files(other)
    for name, page in pages.items():
        ids = {node.attributes["id"] for node in part(other, name, "article").css("[id]")}
        assert page_anchors(page) <= ids, name
        assert links(other, name) == links(one, name), name
        assert all(lands(other, link) for link in links(other, name)), name
        assert "Content-Security-Policy" in (other / name).read_text("utf-8"), name
    for file in site.files:
        assert (other / file.path).read_bytes() == file.content
    for wanted in ("newel.webmanifest", "service-worker.js", "assets/newel-mark.svg"):
        assert (other / wanted).is_file(), wanted


@pytest.mark.parametrize("engine", FILE_ENGINES)
def test_each_engine_has_our_frame(demo: tuple[Site, dict[str, Path]], engine: str) -> None:
    """Navigation, footer and the search dialog's name are those of the overrides."""
    one, other = demo[1]["mkdocs"], demo[1][engine]
    for name in SEEN:
        assert set(links(other, name, ".md-nav--primary")) == set(links(one, name, ".md-nav--primary"))
        assert "safety data sheet" in (part(other, name, "footer.nw-foot").text() or "")
        assert part(other, name, "[data-md-component=search][aria-label]").html


@pytest.mark.browser
@pytest.mark.parametrize("engine", ENGINES)
def test_calculators_answer_as_python_does(
    demo: tuple[Site, dict[str, Path]], chromium: Browser, engine: str
) -> None:
    tab = chromium.new_page()
    tab.add_init_script(LISTEN)
    for name, values in SUMS:
        formula = find_formula(name)
        page = demo[1][engine] / "calculators" / name / "index.html"
        # The address holds the numbers, as a link does that was taken along.
        tab.goto(f"{page.as_uri()}#{urlencode(values)}")
        assert answer_of(tab) == plain(formula.answer.show(formula.evaluate(values))), name
        tab.locator(".nw-calculator input").first.fill("not a number")
        assert answer_of(tab) == "no answer", name
        assert tab.evaluate("window.__reports") == [], name
    tab.close()


def plain(text: str) -> str:
    return text.replace("\u00a0", " ").replace("\u202f", " ")


@pytest.mark.browser
@pytest.mark.parametrize("engine", FILE_ENGINES)
def test_no_engine_brings_a_barrier(
    demo: tuple[Site, dict[str, Path]], chromium: Browser, engine: str
) -> None:
    for scheme in SCHEMES:
        context = chromium.new_context(viewport={"width": 1280, "height": 900})
        tab = context.new_page()
        tab.emulate_media(color_scheme=scheme)
        for name in (SEEN[0], SEEN[2]):
            tab.goto((demo[1][engine] / name).as_uri())
            found = Axe().run(tab).response["violations"]
            assert [(each["id"], each["nodes"][0]["html"]) for each in found] == [], (name, scheme)
        context.close()


class Quiet(http.server.SimpleHTTPRequestHandler):
    """Serves files and says nothing."""

    def log_message(self, format: str, *args: object) -> None:
        """Keep the test's output clean."""


@pytest.fixture
def server(demo: tuple[Site, dict[str, Path]]) -> Iterator[str]:
    """Zensical's site from a server: its search starts a worker, which no browser does from a folder."""
    handler = functools.partial(Quiet, directory=str(demo[1]["zensical"]))
    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler) as running:
        thread = threading.Thread(target=running.serve_forever, daemon=True)
        thread.start()
        yield f"http://127.0.0.1:{running.server_address[1]}/index.html"
        running.shutdown()
        thread.join()


FOUND = """() => [...document.querySelectorAll("body > div")]
  .map((each) => each.shadowRoot ? [...each.shadowRoot.querySelectorAll("a")].map((a) => a.href) : [])
  .flat()"""


@pytest.mark.browser
def test_the_search_of_zensical_knows_our_entries(server: str, chromium: Browser) -> None:
    tab = chromium.new_page()
    tab.goto(server)
    search(tab, "7664-93-9")
    found: list[str] = []
    for _ in range(150):
        found = found or tab.evaluate(FOUND)  # the content policy lets nothing wait in the page itself
        tab.wait_for_timeout(0 if found else 100)
    assert any("substances/sulfuric-acid-96" in link for link in found), found
    tab.close()


def search(tab: Page, words: str) -> None:
    tab.click(".md-search__button")
    tab.wait_for_timeout(300)
    tab.keyboard.type(words)


@pytest.mark.parametrize("engine", FILE_ENGINES)
def test_a_name_is_text_in_every_frame(tmp_path: Path, engine: str) -> None:
    part = Section(1, "page_top", f"Two {NASTY}", "<section><p>x</p></section>")
    page = OurPage("x", f"One {NASTY}", (part,), description=f"Three {NASTY}", listed=True)
    site = Site(f"Lab {NASTY}", (*tiny_site().pages, page), date="2026-11-25")
    publish(site, tmp_path / "site", engine=engine)
    for name in ("index.html", "x/index.html"):
        tree = LexborHTMLParser((tmp_path / "site" / name).read_text("utf-8"))
        assert not tree.css("img[src='x'], em"), name
        assert not [node for node in tree.css("*") if "onerror" in node.attributes]
        title = tree.css_first("title")
        assert title is not None and "<img src=x" in title.text() and "1337" not in (tree.html or "")


def test_an_engine_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(NewelError, match="nonesuch is not installed"):
        run_file_engine("nonesuch", tiny_site(), tmp_path / "site", None)
