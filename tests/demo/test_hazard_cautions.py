"""Every hazard page, card, label and other hazard paper of the built demo site carries the caution."""

from pathlib import Path

import pypdf
import pytest
from selectolax.lexbor import LexborHTMLParser

PAGES = ("hazards", "procedures/*/hazards", "procedures/*/office", "mixtures/*", "substances/*")
PAPERS = ("hazards/*.pdf", "procedures/*/hazards.pdf", "procedures/*/office.pdf", "mixtures/*/*.pdf",
          "substances/*/*.pdf", "cards/*/*.pdf")  # fmt: skip
# A card may be in the lab's second language.
IN_PRINT = (("supplier", "safety office"), ("proveedor", "oficina de seguridad"))
STANDS_ABOVE = ("supplier", "safety office", "local codes", "above")


def plain(text: str) -> str:
    return " ".join(text.split()).lower()


@pytest.mark.parametrize("pattern", PAGES)
def test_every_hazard_page(demo_site: Path, pattern: str) -> None:
    pages = list(demo_site.glob(f"{pattern}/index.html"))
    assert pages, pattern
    for page in pages:
        article = LexborHTMLParser(page.read_text("utf-8")).css_first("article")
        assert article is not None
        text = plain(article.text())
        assert all(word in text for word in STANDS_ABOVE), page
        assert "not the supplier’s sheet" in text, page
        assert article.css(".nw-caution"), page


@pytest.mark.parametrize("pattern", PAPERS)
def test_every_page_of_every_paper(demo_site: Path, pattern: str) -> None:
    papers = list(demo_site.glob(pattern))
    assert papers, pattern
    for paper in papers:
        for number, page in enumerate(pypdf.PdfReader(paper).pages, 1):
            text = plain(page.extract_text())
            said = any(all(word in text for word in words) for words in IN_PRINT)
            assert said, f"{paper} page {number}"


def test_papers_are_linked_from_their_pages(demo_site: Path) -> None:
    for paper in (*demo_site.glob("mixtures/*/*.pdf"), *demo_site.glob("substances/*/*.pdf")):
        assert f'{paper.name}"' in (paper.parent / "index.html").read_text("utf-8"), paper
    for kind in ("hazards", "office"):
        for paper in demo_site.glob(f"procedures/*/{kind}.pdf"):
            assert f'{kind}.pdf"' in (paper.parent / kind / "index.html").read_text("utf-8"), paper


def test_labels_lie_on_every_paper_of_the_lab(demo_site: Path) -> None:
    """A4 by ISO 216, Letter by ANSI/ASME Y14.1, in points of 1/72 in."""
    for kind, size in (("labels", (595, 842)), ("labels-letter", (612, 792))):
        papers = list(demo_site.glob(f"*/*/{kind}.pdf"))
        assert len(papers) > 30
        page = pypdf.PdfReader(papers[0]).pages[0].mediabox
        assert tuple(sorted((round(float(page.width)), round(float(page.height))))) == size
    overview = (demo_site / "hazards" / "index.html").read_text("utf-8")
    assert "waste-labels.pdf" in overview and "waste-labels-letter.pdf" in overview


def test_the_matrix_of_the_lab_says_what_it_does_not_know(demo_site: Path) -> None:
    """Letters and words in every cell; a blank, and a pair that is not held, are no statement of safety."""
    article = LexborHTMLParser((demo_site / "hazards" / "index.html").read_text("utf-8")).css_first("article")
    assert article is not None
    table = article.css_first(".nw-table-reactivity")
    assert table is not None
    reacting = [plain(cell.text()) for cell in table.css("td.nw-cell-reacts")]
    assert any("h gt" in text and "toxic gas" in text for text in reacting)
    blanks = [plain(cell.text()) for cell in table.css("td.nw-cell-blank")]
    assert blanks and all("not a statement of safety" in text for text in blanks)
    unknown = [plain(cell.text()) for cell in table.css("td.nw-cell-unknown")]
    assert unknown and all("not held here" in t and "not a statement of safety" in t for t in unknown)
    assert "pairs of 20 of the chart's 41 groups are held here" in plain(table.text())
    told = [cell for cell in table.css("td[class]") if "none" not in str(cell.attributes["class"])]
    assert all(cell.text(strip=True) for cell in told)
