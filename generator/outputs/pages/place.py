"""The page of a place."""

from generator.outputs.address_links import Book, Links
from generator.outputs.page import Page, Section
from generator.outputs.pages.parts import Part, part_anchors, part_sections
from generator.outputs.search import SearchEntry
from generator.outputs.templating import render
from generator.views.addresses import place_address
from generator.views.place import PlaceView

_PARTS: tuple[Part[PlaceView], ...] = (
    Part("worn_here", "Worn here", "shared/signs.j2", lambda view: {"signs": view.wear}),
    Part("hazards_here", "Hazards here", "shared/signs.j2", lambda view: {"signs": view.hazards}),
    Part(
        "whenever_opened",
        "Whenever it is opened",
        "place/opened.j2",
        lambda view: {"look": view.look, "timer": view.timer},
    ),
    Part("steps_here", "Steps here", "shared/links.j2", lambda view: {"links": view.steps}),
)


def place_anchors(view: PlaceView) -> frozenset[str]:
    """Return the anchors that other pages may link to."""
    return part_anchors(_PARTS, view)


def place_page(view: PlaceView, book: Book) -> Page:
    """Return the page; a link that leads nowhere raises NewelError."""
    links = Links(book, place_address(view.id))
    head = Section(1, "page_top", view.title, render("place/head.j2", links, view=view))
    return Page(links.here, view.title, (head, *part_sections(_PARTS, view, links)), kind="place")


def place_entry(view: PlaceView) -> SearchEntry:
    """Return what the place is found by."""
    return SearchEntry(place_address(view.id), view.title, view.search_text)
