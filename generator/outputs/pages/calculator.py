"""The page of one formula."""

from generator.outputs.address_links import Book, Links
from generator.outputs.chart import chart_svg
from generator.outputs.javascript import formula_path
from generator.outputs.page import Page, Section
from generator.outputs.pages.parts import Part, part_anchors, part_sections
from generator.outputs.search import SearchEntry
from generator.outputs.templating import render
from generator.views.addresses import calculator_address
from generator.views.calculator import CalculatorView

_PARTS: tuple[Part[CalculatorView], ...] = (
    Part("wrong_numbers", "What a wrong number does", "calculator/effects.j2",
         lambda view: {"any": view.effects or view.naive_shown}),
    Part("the_chart", "How the answer moves", "calculator/chart.j2",
         lambda view: {"chart": chart_svg(view.chart) if view.chart else ""}),
    Part("ready_reckoner", "Ready reckoner", "calculator/reckoner.j2", lambda view: {"any": view.reckoner}),
    Part("the_formula", "The formula", "calculator/formula.j2", lambda view: {"symbols": view.boxes}),
    Part("worked_example", "Worked example", "calculator/worked.j2", lambda view: {"any": view.examples}),
    Part("used_in", "Used in", "shared/links.j2", lambda view: {"links": view.used_in}),
)  # fmt: skip

# What the page's script works with; the rest of the view stands on the page already.
_FORM = (
    "name", "title", "boxes", "answer_label", "answer_symbol", "units", "decimals", "toward", "clock",
    "solve", "never", "never_shown", "never_above", "naive", "requires", "code", "date",
)  # fmt: skip


def calculator_anchors(view: CalculatorView) -> frozenset[str]:
    """Return the anchors that other pages may link to."""
    return part_anchors(_PARTS, view)


def calculator_page(view: CalculatorView, book: Book) -> Page:
    """Return the page; a link that leads nowhere raises NewelError."""
    links = Links(book, calculator_address(view.name))
    form = {name: getattr(view, name) for name in _FORM} | {
        "along": view.chart.along if view.chart else "",
    }
    html = render("calculator/calculator.j2", links, view=view, form=form, formula=formula_path(view.name))
    head = Section(1, "page_top", view.title, html)
    sections = (head, *part_sections(_PARTS, view, links))
    return Page(links.here, view.title, sections, description=view.decides, kind="calculator")


def calculator_entry(view: CalculatorView) -> SearchEntry:
    """Return what the formula is found by."""
    return SearchEntry(calculator_address(view.name), view.title, view.search_text or view.decides)
