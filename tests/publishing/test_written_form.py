"""Pages as files, laid out by an engine without our plugin: same headings, same anchors, same bodies."""

import re
from pathlib import Path

from mkdocs.commands.build import build
from mkdocs.config import load_config
from selectolax.lexbor import LexborHTMLParser

from generator.outputs.page import Page, Section, page_anchors
from generator.publishing.written_form import page_text, write_pages
from tests.site.sample_site import sample_site

CONFIG = """site_name: x
theme: material
use_directory_urls: false
plugins: []
markdown_extensions: [attr_list, tables, admonition]
"""


def test_an_engine_without_plugins_shows_the_same_pages(tmp_path: Path) -> None:
    site = sample_site()
    write_pages(site, tmp_path / "docs")
    (tmp_path / "mkdocs.yml").write_text(CONFIG, "utf-8")
    build(load_config(str(tmp_path / "mkdocs.yml")))
    for page in site.pages:
        html = (tmp_path / "site" / page.address / "index.html").read_text("utf-8")
        article = LexborHTMLParser(html).css_first("article")
        assert article is not None
        ids = {node.attributes["id"] for node in article.css("[id]")}
        assert page_anchors(page) <= ids, page.address
        for section in page.sections:
            assert squeezed(section.html) in squeezed(html), (page.address, section.anchor)
    assert (tmp_path / "site" / "cards/copper-the-holes/coat-card.pdf").exists()


def squeezed(html: str) -> str:
    """Without line ends and blanks, which an engine may move."""
    return re.sub(r"\s+", "", html)


def test_a_title_is_no_markup() -> None:
    page = Page("x", "x", (Section(1, "top", "A *b* [c](d) {#e} <f>", "<section></section>"),))
    heading = page_text(page).split("\n\n")[1]
    assert heading == "# A &#42;b&#42; &#91;c&#93;(d) &#123;&#35;e&#125; &lt;f&gt; {#top}"
