"""The page of a substance or mixture, and the hazard summary of a procedure."""

from generator.outputs.address_links import Book, Links
from generator.outputs.page import Page, Section
from generator.outputs.pages.parts import Part, part_anchors, part_sections
from generator.outputs.search import SearchEntry
from generator.outputs.templating import render
from generator.views.addresses import hazards_address, mixture_address, substance_address
from generator.views.chemical import ChemicalView, HazardSummaryView

_PARTS: tuple[Part[ChemicalView], ...] = (
    Part("summary", "Summary", "chemical/headings.j2", lambda view: {"headings": view.headings}),
    Part("made_of", "Made of", "chemical/made_of.j2", lambda view: {"made_of": view.made_of}),
    Part("worn_with_it", "Worn with it", "shared/signs.j2", lambda view: {"signs": view.wear}),
    Part(
        "screening",
        "Screening from the composition",
        "chemical/screening.j2",
        lambda view: {"screening": view.screening},
    ),
    Part("met_in", "Met in", "shared/links.j2", lambda view: {"links": view.used_in}),
)
_EMERGENCIES: tuple[Part[HazardSummaryView], ...] = (
    Part("emergencies", "When it goes wrong", "home/emergencies.j2", lambda view: {"any": view.emergencies}),
)


def chemical_address(kind: str, id: str) -> str:
    """Return the address of a page; `kind` is "substance" or "mixture"."""
    return mixture_address(id) if kind == "mixture" else substance_address(id)


def chemical_anchors(view: ChemicalView) -> frozenset[str]:
    """Return the anchors that other pages may link to."""
    return part_anchors(_PARTS, view)


def chemical_page(view: ChemicalView, book: Book) -> Page:
    """Return the page of a substance or mixture; a link that leads nowhere raises NewelError."""
    links = Links(book, chemical_address(view.kind, view.id))
    head = Section(1, "page_top", view.title, render("chemical/head.j2", links, view=view))
    return Page(links.here, view.title, (head, *part_sections(_PARTS, view, links)), kind=view.kind)


def chemical_entry(view: ChemicalView) -> SearchEntry:
    """Return what the substance or mixture is found by: name, CAS number, statements."""
    return SearchEntry(
        chemical_address(view.kind, view.id), view.title, view.search_text, view.search_tags, boost=1.5
    )


def summary_anchors(view: HazardSummaryView) -> frozenset[str]:
    """Return the anchors that other pages may link to: one for each substance or mixture."""
    return part_anchors(_EMERGENCIES, view) | {item.id for item in view.items}


def summary_page(view: HazardSummaryView, book: Book) -> Page:
    """Return the hazard summary; a link that leads nowhere raises NewelError."""
    links = Links(book, hazards_address(view.procedure))
    sections = (
        Section(1, "page_top", view.title, render("chemical/summary.j2", links, view=view)),
        *(
            Section(2, item.id, item.title, render("chemical/item.j2", links, item=item))
            for item in view.items
        ),
        *part_sections(_EMERGENCIES, view, links),
    )
    return Page(links.here, view.title, sections, kind="hazards")
