"""The page of a class's day plan."""

from collections.abc import Iterator

from generator.outputs.address_links import Book, Links
from generator.outputs.page import Page, Section
from generator.outputs.templating import render
from generator.views.addresses import day_plan_address
from generator.views.day_page import DayPageView


def day_anchors(view: DayPageView) -> frozenset[str]:
    """Return the anchors that other pages may link to: sessions and their tables."""
    return frozenset(
        anchor for day in view.days for anchor in (day.anchor, *(table.anchor for table in day.tables))
    )


def day_page(view: DayPageView, book: Book) -> Page:
    """Return the page; a link that leads nowhere raises NewelError."""
    links = Links(book, day_plan_address(view.procedure))
    return Page(links.here, view.title, tuple(_sections(view, links)), kind="day")


def _sections(view: DayPageView, links: Links) -> Iterator[Section]:
    yield Section(1, "page_top", view.title, render("day/head.j2", links, view=view))
    for day in view.days:
        yield Section(2, day.anchor, day.title, render("day/day.j2", links, day=day))
        for table in day.tables:
            yield Section(3, table.anchor, table.title, render("overview/table.j2", links, table=table))
