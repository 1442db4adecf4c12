"""The pages of a built site as ready Markdown: the yardstick lays out the same pages with the same words."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

from bs4 import BeautifulSoup, Tag
from markdownify import MarkdownConverter

_CONFIG = """\
site_name: Ready Markdown
theme: {name: material, font: false}
plugins: [search]
nav: [index.md]
not_in_nav: "*"
markdown_extensions: [attr_list, def_list, tables]
"""
# Ours alone draws these and works with them; the yardstick is let off.
_NOT_WORDS = ("svg", "script", "style", "template", "input", "math")
_GAPS = re.compile(r"\n\s*\n+")


def write_ready(site: Path, folder: Path) -> int:
    """Write every page of a site as Markdown, with a mkdocs.yml, in a folder; returns how many there are."""
    count = 0
    for page in sorted(site.rglob("index.html")):
        target = folder / "docs" / page.relative_to(site).with_suffix(".md")
        target.parent.mkdir(parents=True, exist_ok=True)
        article = BeautifulSoup(page.read_bytes(), "html.parser").find("article")
        assert isinstance(article, Tag)
        target.write_text(markdown(article), encoding="utf-8")
        for file in _files(article, page.parent, site.resolve()):
            copy = folder / "docs" / file.relative_to(site.resolve())
            copy.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(file, copy)
        count += 1
    (folder / "mkdocs.yml").write_text(_CONFIG, encoding="utf-8")
    return count


def markdown(article: Tag) -> str:
    """The words of an article, its headings with their ids, its links to other pages' Markdown."""
    for drawn in article(_NOT_WORDS):
        drawn.decompose()
    for small in article("small"):
        small.insert_before(" ")
    for link in article("a", href=True):
        link["href"] = str(link["href"]).replace("/index.html", "/index.md")
    for heading in article(re.compile("^h[1-6]$"), id=True):
        heading.append(f" {{#{heading['id']}}}")
    text: str = MarkdownConverter(heading_style="ATX", escape_misc=False).convert_soup(article)
    return _GAPS.sub("\n\n", text).strip() + "\n"


def _files(article: Tag, home: Path, site: Path) -> Iterator[Path]:
    """The files of the site to which a page leads or which it shows."""
    leads = (str(tag.get("href") or tag.get("src") or "") for tag in article(("a", "img")))
    for lead in leads:
        path = (home / lead.partition("#")[0]).resolve()
        if path.is_file() and path.is_relative_to(site) and path.suffix != ".html":
            yield path
