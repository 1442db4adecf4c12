"""A small site with every kind of page."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from generator.outputs.address_links import AddressBook
from generator.outputs.page import Page, Section
from generator.outputs.pages import calculator, checking, chemical, lists, place, posted, procedure
from generator.outputs.site import Site, SiteFile
from tests.site import sample_pages as sample
from tests.site.sample_procedure import FOUND_BY, PROCEDURE

PICTURE = (
    b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20">'
    b'<path d="M4 4h14v12H4z"/><path d="M22 4h14v12H22z" fill="#777"/></svg>'
)
FORMULAS = b"""globalThis.newelFormulas = { plating_current: {
  answer: (g, w) => (g.density * (g.area + g.contact)), requires: [], naive: null, solve: {} } };
"""
FILES = (
    SiteFile("pictures/wall-even-and-patchy.svg", PICTURE),
    SiteFile("cards/copper-the-holes/coat-card.pdf", b"%PDF-1.7 sample"),
    SiteFile("assets/formulas/plating_current.js", FORMULAS),
)
Row = tuple[str, frozenset[str], Callable[[AddressBook], Page]]


def _row(address: str, anchors: frozenset[str], make: Callable[[Any, AddressBook], Page], view: Any) -> Row:
    return address, anchors, lambda book: make(view, book)


def sample_rows() -> list[Row]:
    """Address, anchors, and how the page is made once the book is known."""
    return [
        _row("", lists.home_anchors(sample.HOME), lists.home_page, sample.HOME),
        _row(
            "procedures/copper-the-holes",
            procedure.procedure_anchors(PROCEDURE),
            procedure.procedure_page,
            PROCEDURE,
        ),
        _row(
            "procedures/copper-the-holes/hazards",
            chemical.summary_anchors(sample.SUMMARY),
            chemical.summary_page,
            sample.SUMMARY,
        ),
        *(_row(v.address, lists.index_anchors(v), lists.index_page, v) for v in sample.INDEXES),
        *(_row(f"places/{v.id}", place.place_anchors(v), place.place_page, v) for v in sample.PLACES),
        *(
            _row(
                chemical.chemical_address(v.kind, v.id),
                chemical.chemical_anchors(v),
                chemical.chemical_page,
                v,
            )
            for v in sample.CHEMICALS
        ),
        _row(
            "calculators/plating_current",
            calculator.calculator_anchors(sample.CALCULATOR),
            calculator.calculator_page,
            sample.CALCULATOR,
        ),
        _row("glossary", lists.glossary_anchors(sample.GLOSSARY), lists.glossary_page, sample.GLOSSARY),
        _row("checks/arrives-wet", frozenset(), checking.rule_page, sample.RULE),
        _row("checks/report", checking.report_anchors(sample.REPORT), checking.report_page, sample.REPORT),
        _row("cards", frozenset(), posted.posted_page, sample.POSTED),
        _row("cards/replace", frozenset(), posted.replace_page, sample.POSTED),
        _row("cards/current", frozenset(), posted.current_page, sample.POSTED),
    ]


def sample_site(**changes: Any) -> Site:
    """Pages, files and entries as a pipeline would hand them over."""
    rows = sample_rows()
    book = AddressBook({address: anchors for address, anchors, _ in rows}, frozenset(f.path for f in FILES))
    entries = (
        procedure.procedure_entry(PROCEDURE, *FOUND_BY),
        *procedure.symptom_entries(PROCEDURE),
        *(place.place_entry(view) for view in sample.PLACES),
        *(chemical.chemical_entry(view) for view in sample.CHEMICALS),
        calculator.calculator_entry(sample.CALCULATOR),
        *lists.glossary_entries(sample.GLOSSARY),
        checking.rule_entry(sample.RULE),
    )
    fields: dict[str, Any] = {
        "name": "Larkmere Printed Circuits Lab",
        "pages": tuple(make(book) for _, _, make in rows),
        "files": FILES,
        "entries": entries,
        "date": "2026-11-25",
    }
    return Site(**{**fields, **changes})


def tiny_site(title: str = "Small lab") -> Site:
    """One page and nothing else."""
    html = "<section><p>Sample.</p></section>"
    return Site(
        title, (Page("", title, (Section(1, "page_top", title, html),), listed=True),), date="2026-11-25"
    )


def write_sample(folder: Path) -> Path:
    """Publish the sample below a folder; returns the site's folder."""
    from generator.publishing.publish import publish

    publish(sample_site(), folder / "site")
    return folder / "site"
