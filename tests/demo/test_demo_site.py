"""The whole demo lab as its users meet it: pages, links, search, cards and their codes."""

import hashlib
import shutil
import subprocess
import sys
from pathlib import Path
from urllib.parse import urlsplit

import pypdfium2
import pytest
import zxingcpp
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, BrowserContext, Page
from selectolax.lexbor import LexborHTMLParser

from tests.demo.conftest import ROOT, build_demo

KINDS = (
    "index.html",
    "procedures/index.html",
    "procedures/copper-the-holes/index.html",
    "procedures/copper-the-holes/hazards/index.html",
    "procedures/copper-the-holes/office/index.html",
    "hazards/index.html",
    "places/etch/index.html",
    "mixtures/copper-mix/index.html",
    "substances/sulfuric-acid-96/index.html",
    "calculators/plating_area/index.html",
    "glossary/index.html",
    "checks/arrives-wet/index.html",
    "checks/report/index.html",
    "cards/index.html",
)


def _digests(site: Path) -> dict[str, str]:
    return {
        file.relative_to(site).as_posix(): hashlib.sha256(file.read_bytes()).hexdigest()
        for file in sorted(site.rglob("*"))
        if file.is_file()
    }


def _target(site: Path, page: Path, href: str) -> tuple[Path, str]:
    parts = urlsplit(href)
    path = (page.parent / parts.path).resolve() if parts.path else page
    if parts.path.startswith("/"):
        path = site / parts.path.lstrip("/")
    return (path / "index.html" if path.is_dir() else path), parts.fragment


def test_every_link_and_anchor_of_the_site_leads_somewhere(demo_site: Path) -> None:
    trees = {page: LexborHTMLParser(page.read_text(encoding="utf-8")) for page in demo_site.rglob("*.html")}
    ids = {page: {node.attributes.get("id") for node in tree.css("[id]")} for page, tree in trees.items()}
    lost = []
    for page, tree in trees.items():
        if page.name == "404.html":
            continue
        hrefs = [node.attributes.get(name) for name in ("href", "src") for node in tree.css(f"[{name}]")]
        for href in filter(None, hrefs):
            if urlsplit(href).scheme in ("data", "mailto"):
                continue
            assert not urlsplit(href).netloc or "rel" in href or "larkmere.example" in href, (page, href)
            if urlsplit(href).netloc:
                continue
            target, anchor = _target(demo_site, page, href)
            if not target.is_file() or (anchor and target in ids and anchor not in ids[target]):
                lost.append((page.relative_to(demo_site).as_posix(), href))
    assert lost == []


def test_two_builds_are_the_same_to_the_byte(demo_site: Path, tmp_path: Path) -> None:
    elsewhere = tmp_path / "another folder"
    elsewhere.mkdir()
    again = _digests(build_demo(elsewhere))
    first = _digests(demo_site)
    assert {name for name in first if first[name] != again.get(name)} == set()
    assert first.keys() == again.keys()


def test_the_engine_builds_it_strictly_by_its_own_command(tmp_path: Path) -> None:
    for name in ("procedures", "site_src"):
        shutil.copytree(ROOT / name, tmp_path / name)
    shutil.copy(ROOT / "mkdocs.yml", tmp_path / "mkdocs.yml")
    command = [sys.executable, "-m", "mkdocs", "build", "--strict"]
    done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "site" / "procedures" / "copper-the-holes" / "index.html").is_file()


def test_the_code_on_each_card_leads_to_a_page_of_the_site(demo_site: Path) -> None:
    cards = sorted((demo_site / "cards").rglob("*-card*.pdf"))
    assert len(cards) >= 8
    for card in cards:
        page = pypdfium2.PdfDocument(card)[0]
        codes = zxingcpp.read_barcodes(page.render(scale=150 / 72).to_pil())
        assert codes, card.name
        address = urlsplit(codes[0].text)
        assert address.netloc == "circuits.larkmere.example"
        target = demo_site / address.path.lstrip("/")
        assert target.is_file() or (target / "index.html").is_file(), codes[0].text


def _context(chromium: Browser, width: int, scheme: str) -> BrowserContext:
    return chromium.new_context(viewport={"width": width, "height": 900}, color_scheme=scheme)  # type: ignore[arg-type]


def _listen(page: Page) -> list[str]:
    """The errors that a page's console is told of, from now on."""
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text) if message.type == "error" else None)
    return said


def _search(page: Page, words: str) -> list[str]:
    page.click(".md-search__input")
    page.keyboard.type(words)
    page.wait_for_selector(".md-search-result__link", timeout=15_000)
    return [node.get_attribute("href") or "" for node in page.query_selector_all(".md-search-result__link")]


@pytest.mark.browser
@pytest.mark.parametrize(
    ("words", "page"),
    [
        ("H314", "procedures/copper-the-holes"),
        ("7664-93-9", "substances/sulfuric-acid-96"),
        ("grey smear", "procedures/copper-the-holes"),
        ("A/dm²", "calculators/"),
    ],
)
def test_search_finds_steps_statements_numbers_and_units(
    chromium: Browser, demo_site: Path, words: str, page: str
) -> None:
    context = _context(chromium, 1280, "light")
    try:
        opened = context.new_page()
        opened.goto((demo_site / "index.html").as_uri())
        assert any(page in href for href in _search(opened, words))
    finally:
        context.close()


@pytest.mark.browser
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_kind_of_page_is_clean_quiet_and_keeps_to_itself(
    chromium: Browser, demo_site: Path, scheme: str
) -> None:
    context = _context(chromium, 1280, scheme)
    asked: list[str] = []
    context.on("request", lambda request: asked.append(request.url))
    try:
        for kind in KINDS:
            page = context.new_page()
            said = _listen(page)
            page.goto((demo_site / kind).as_uri())
            page.wait_for_load_state("networkidle")
            assert said == [], kind
            found = Axe().run(page)  # it reads style sheets in a way that a folder refuses, and says so
            assert found.violations_count == 0, f"{kind} {scheme}: {found.generate_report()[:2000]}"
            page.close()
    finally:
        context.close()
    assert [url for url in asked if not url.startswith(("file:", "data:", "blob:"))] == []


@pytest.mark.browser
def test_no_page_scrolls_sideways_at_320_pixels(chromium: Browser, demo_site: Path) -> None:
    context = _context(chromium, 320, "light")
    wide = []
    try:
        page = context.new_page()
        for kind in KINDS:
            page.goto((demo_site / kind).as_uri())
            if page.evaluate("document.documentElement.scrollWidth") > 320:
                wide.append(kind)
    finally:
        context.close()
    assert wide == []
