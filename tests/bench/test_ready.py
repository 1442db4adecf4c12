"""The yardstick of whole builds lays out the same pages, with the same words, as ready Markdown."""

import datetime
import re
from collections import Counter
from pathlib import Path

from bs4 import BeautifulSoup, Tag
from markdown import Markdown  # type: ignore[import-untyped]

from bench.ready import markdown, write_ready
from generator.outputs.page import join_sections, whole_page
from generator.pipeline import build_site
from tests.many_labs import write_many

TODAY = datetime.date(2026, 11, 25)
_MARKS = re.compile(r"\W+")


def article(html: str) -> Tag:
    found = BeautifulSoup(f"<article>{html}</article>", "html.parser").find("article")
    assert isinstance(found, Tag)
    return found


def words(html: str) -> list[str]:
    text = BeautifulSoup(html, "html.parser")
    for drawn in text(("svg", "script", "style", "template", "math")):
        drawn.decompose()
    return _MARKS.sub(" ", text.get_text(" ")).split()


def test_headings_keep_their_ids_and_links_lead_to_markdown() -> None:
    html = (
        '<h2 id="rinse">Rinse</h2><p>See <a href="../bath/index.html#hot">the bath</a>.</p>'
        "<dl><dt>For</dt><dd>90 s</dd></dl><svg><text>drawn</text></svg>"
    )
    assert markdown(article(html)) == (
        "## Rinse {#rinse}\n\nSee [the bath](../bath/index.md#hot).\n\nFor\n:   90 s\n"
    )


def test_no_word_of_a_page_is_lost_on_the_way(tmp_path: Path) -> None:
    site = build_site(write_many(tmp_path, 1), TODAY, draft=True).site
    assert site is not None
    plain = Markdown(extensions=["attr_list", "def_list", "tables"])
    pages = [page for page in site.pages if page.address.startswith("procedures/")]
    assert len(pages) == 3
    for page in map(whole_page, pages):
        html = join_sections(page)
        laid = words(plain.reset().convert(markdown(article(html))))
        assert not Counter(words(html)) - Counter(laid), page.address
        assert len(laid) < 1.01 * len(words(html)), page.address


def test_every_page_is_written_with_the_files_that_it_shows(tmp_path: Path) -> None:
    site = tmp_path / "site"
    for address in ("", "places/bath/"):
        (site / address).mkdir(parents=True, exist_ok=True)
        (site / address / "index.html").write_text(
            f'<nav>Menu</nav><article><h1>Page</h1><img src="{"../../" if address else ""}sign.svg">'
            "</article>",
            encoding="utf-8",
        )
    (site / "sign.svg").write_text("<svg/>")
    (site / "other.svg").write_text("<svg/>")
    assert write_ready(site, tmp_path / "ready") == 2
    files = {str(path.relative_to(tmp_path / "ready")) for path in (tmp_path / "ready").rglob("*.*")}
    assert files == {"mkdocs.yml", "docs/index.md", "docs/sign.svg", "docs/places/bath/index.md"}
    assert "Menu" not in (tmp_path / "ready" / "docs" / "index.md").read_text()
