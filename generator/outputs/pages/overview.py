"""The overview of a lab's hazards, and a procedure's sheet for the safety office."""

from generator.outputs.address_links import Book, Links
from generator.outputs.page import Page, Section
from generator.outputs.search import SearchEntry
from generator.outputs.templating import render
from generator.views.addresses import HAZARDS, office_address
from generator.views.lab_hazards import LabHazardsView, OfficeView

_SIGNS = "signatures_"


def overview_anchors(view: LabHazardsView) -> frozenset[str]:
    """Return the anchors that other pages may link to: one for each table."""
    return frozenset(table.anchor for table in view.tables)


def overview_page(view: LabHazardsView, book: Book) -> Page:
    """Return the overview; a link that leads nowhere raises NewelError."""
    links = Links(book, HAZARDS)
    tables = (
        Section(2, one.anchor, one.title, render("overview/table.j2", links, table=one))
        for one in view.tables
    )
    head = Section(1, "page_top", view.title, render("overview/head.j2", links, view=view))
    return Page(HAZARDS, view.title, (head, *tables), kind="hazards", listed=True)


def overview_entry(view: LabHazardsView) -> SearchEntry:
    """Return what the overview is found by: the titles of its tables and what stands in their rows."""
    words = " ".join(row[0].text for table in view.tables for row in table.rows)
    return SearchEntry(HAZARDS, view.title, f"{' '.join(table.title for table in view.tables)} {words}")


def office_anchors(view: OfficeView) -> frozenset[str]:
    """Return the anchors that other pages may link to: one for each section."""
    return frozenset((*map(_anchor, range(len(view.sections))), _SIGNS))


def office_page(view: OfficeView, book: Book) -> Page:
    """Return the sheet for the safety office; a link that leads nowhere raises NewelError."""
    links = Links(book, office_address(view.procedure))
    sections = (
        Section(2, _anchor(number), one.title, render("office/section.j2", links, section=one))
        for number, one in enumerate(view.sections)
    )
    signs = Section(2, _SIGNS, "Signatures", render("office/signs.j2", links, view=view))
    head = Section(1, "page_top", view.title, render("office/head.j2", links, view=view))
    return Page(links.here, view.title, (head, *sections, signs), kind="hazards")


def _anchor(number: int) -> str:
    return f"part_{number + 1}"
