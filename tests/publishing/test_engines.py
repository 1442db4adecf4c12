"""The same lab laid out by each engine: the same pages, ids and links in every article."""

import datetime
from functools import cache
from pathlib import Path
from urllib.parse import urldefrag, urljoin

import pytest
from selectolax.lexbor import LexborHTMLParser

from generator.outputs.page import page_anchors
from generator.outputs.site import Site
from generator.pipeline import build_site
from generator.problems import NewelError
from generator.publishing import publish
from generator.publishing.file_engines import FILE_ENGINES, run_file_engine

LAB = Path(__file__).parents[1] / "labs" / "minimum"


@cache
def lab_site() -> Site:
    site = build_site(LAB, datetime.date(2026, 11, 25), draft=True).site
    assert site is not None
    return site


def html_files(folder: Path) -> set[str]:
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*.html")} - {"404.html"}


def article(folder: Path, name: str) -> LexborHTMLParser:
    found = LexborHTMLParser((folder / name).read_text("utf-8")).css_first("article")
    assert found is not None and found.html
    return LexborHTMLParser(found.html)


def links(folder: Path, name: str) -> list[str]:
    """Where the links of an article lead, without the anchors that a theme sets beside headings."""
    found = (node.attributes["href"] or "" for node in article(folder, name).css("a[href]:not(.headerlink)"))
    return sorted(urljoin(f"/{name}", link) for link in found)


@pytest.mark.parametrize("engine", FILE_ENGINES)
def test_each_engine_shows_the_same_pages(tmp_path: Path, engine: str) -> None:
    site = lab_site()
    publish(site, tmp_path / "one" / "site")
    publish(site, tmp_path / "other" / "site", engine=engine)
    one, other = tmp_path / "one" / "site", tmp_path / "other" / "site"
    pages = {f"{page.address}/index.html".lstrip("/"): page for page in site.pages}
    assert set(pages) == html_files(one) == html_files(other)
    for name, page in pages.items():
        ids = {node.attributes["id"] for node in article(other, name).css("[id]")}
        assert page_anchors(page) <= ids, name
        assert links(other, name) == links(one, name), name
        assert all(lands(other, link) for link in links(other, name)), name
        assert "Content-Security-Policy" in (other / name).read_text("utf-8"), name
    for file in site.files:
        assert (other / file.path).read_bytes() == file.content


def lands(folder: Path, link: str) -> bool:
    """Whether a link within the site leads to a file that is there."""
    path = urldefrag(link)[0]
    return not path.startswith("/") or (folder / path.lstrip("/")).exists()


def test_an_engine_that_is_not_there_is_named(tmp_path: Path) -> None:
    with pytest.raises(NewelError, match="nonesuch is not installed"):
        run_file_engine("nonesuch", lab_site(), tmp_path / "site", None)
