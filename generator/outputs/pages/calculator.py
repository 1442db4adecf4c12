"""The page of one formula."""

from generator.outputs.address_links import AddressBook, Links
from generator.outputs.page import Page, Section
from generator.outputs.pages.parts import Part, part_anchors, part_sections
from generator.outputs.search import SearchEntry
from generator.outputs.templating import render
from generator.views.addresses import calculator_address
from generator.views.calculator import CalculatorView

_PARTS: tuple[Part[CalculatorView], ...] = (
    Part("the_formula", "The formula", "calculator/formula.j2", lambda view: {"symbols": view.boxes}),
    Part("worked_example", "Worked example", "calculator/worked.j2", lambda view: {"any": view.examples}),
    Part("ready_reckoner", "Ready reckoner", "calculator/reckoner.j2", lambda view: {"any": view.reckoner}),
    Part("used_in", "Used in", "shared/links.j2", lambda view: {"links": view.used_in}),
)


def calculator_anchors(view: CalculatorView) -> frozenset[str]:
    """Return the anchors that other pages may link to."""
    return part_anchors(_PARTS, view)


def calculator_page(view: CalculatorView, book: AddressBook) -> Page:
    """Return the page; a link that leads nowhere raises NewelError."""
    links = Links(book, calculator_address(view.name))
    head = Section(1, "page_top", view.title, render("calculator/calculator.j2", links, view=view))
    sections = (head, *part_sections(_PARTS, view, links))
    return Page(links.here, view.title, sections, description=view.decides, kind="calculator")


def calculator_entry(view: CalculatorView) -> SearchEntry:
    """Return what the formula is found by."""
    return SearchEntry(calculator_address(view.name), view.title, view.search_text or view.decides)
