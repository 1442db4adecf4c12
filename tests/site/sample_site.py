"""A small site of every kind of page."""

from pathlib import Path

from generator.outputs.address_links import AddressBook
from generator.outputs.page import Page, Section
from generator.outputs.pages.procedure import procedure_anchors, procedure_entry, procedure_page
from generator.outputs.search import SearchEntry
from generator.outputs.site import Site, SiteFile
from tests.site.sample_procedure import PROCEDURE

PICTURE = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20"><rect width="40" height="20"/></svg>'
FILES = (
    SiteFile("pictures/wall-even-and-patchy.svg", PICTURE),
    SiteFile("cards/copper-the-holes/coat-card.pdf", b"%PDF-1.7 sample"),
    SiteFile("assets/newel-formulas.js", b'"use strict"; window.newel = { formulas: {} };'),
)


def plain_page(address: str, title: str) -> Page:
    """A page with nothing but a title."""
    return Page(address, title, (Section(1, "page_top", title, "<section><p>Sample.</p></section>"),))


def sample_site() -> Site:
    """Pages, files and entries as a pipeline would hand them over."""
    plain = [
        plain_page(address, title)
        for address, title in (
            ("places/black", "Graphite"),
            ("places/copper", "Copper cell"),
            ("places/light", "Light table"),
            ("calculators/plating_current", "Plating current"),
        )
    ]
    pages = {page.address: frozenset({"page_top"}) for page in plain}
    pages[""] = frozenset({"page_top"})
    pages["procedures/copper-the-holes"] = procedure_anchors(PROCEDURE)
    book = AddressBook(pages, frozenset(file.path for file in FILES))
    home = plain_page("", "Printed Circuits Lab")
    home = Page(home.address, home.title, home.sections, listed=True)
    return Site(
        "Larkmere Printed Circuits Lab",
        (home, procedure_page(PROCEDURE, book), *plain),
        FILES,
        (
            procedure_entry(PROCEDURE),
            SearchEntry("places/black", "Graphite", "station 3 <img src=x onerror=alert(1)>"),
        ),
        date="2026-11-25",
    )


def write_sample(folder: Path) -> Path:
    """Publish the sample below a folder; returns the site's folder."""
    from generator.publishing import publish

    publish(sample_site(), folder / "site")
    return folder / "site"
