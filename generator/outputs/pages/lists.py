"""Pages that lead on: the lab's first page, indexes, the glossary."""

from generator.outputs.address_links import Book, Links
from generator.outputs.page import Page, Section
from generator.outputs.pages.parts import Part, part_anchors, part_sections
from generator.outputs.search import SearchEntry
from generator.outputs.templating import render
from generator.views.addresses import GLOSSARY, HOME
from generator.views.home import HomeView
from generator.views.index import GlossaryView, IndexView

_HOME_PARTS: tuple[Part[HomeView], ...] = (
    Part("our_procedures", "Procedures", "home/procedures.j2", lambda view: {"procedures": view.procedures}),
    Part("what_changed", "What changed", "shared/rows.j2", lambda view: {"rows": view.changes}),
    Part("who_to_call", "Who to call", "home/calls.j2", lambda view: {"calls": view.calls}),
    Part("emergencies", "When it goes wrong", "home/emergencies.j2", lambda view: {"any": view.emergencies}),
    Part("the_room", "The room", "home/room.j2", lambda view: {"any": view.sessions or view.base_wear}),
)


def home_anchors(view: HomeView) -> frozenset[str]:
    """Return the anchors that other pages may link to."""
    return part_anchors(_HOME_PARTS, view)


def home_page(view: HomeView, book: Book) -> Page:
    """Return the lab's first page; a link that leads nowhere raises NewelError."""
    links = Links(book, HOME)
    head = Section(1, "page_top", view.title, render("home/head.j2", links, view=view))
    sections = (head, *part_sections(_HOME_PARTS, view, links))
    return Page(HOME, view.title, sections, kind="home", listed=True)


def index_anchors(view: IndexView) -> frozenset[str]:
    """Return the anchors that other pages may link to: one for each group."""
    return frozenset(group.anchor for group in view.groups)


def index_page(view: IndexView, book: Book) -> Page:
    """Return an index; a link that leads nowhere raises NewelError."""
    links = Links(book, view.address)
    sections = (
        Section(1, "page_top", view.title, render("index/lead.j2", links, view=view)),
        *(
            Section(2, group.anchor, group.title, render("shared/rows.j2", links, rows=group.rows))
            for group in view.groups
        ),
    )
    return Page(view.address, view.title, sections, description=view.lead, kind="index", listed=view.listed)


def glossary_anchors(view: GlossaryView) -> frozenset[str]:
    """Return the anchors that other pages may link to: one for each word."""
    return frozenset(term.id for term in view.terms)


def glossary_page(view: GlossaryView, book: Book) -> Page:
    """Return the glossary."""
    html = render("index/glossary.j2", Links(book, GLOSSARY), view=view)
    return Page(
        GLOSSARY, "Glossary", (Section(1, "page_top", "Glossary", html),), kind="glossary", listed=True
    )


def glossary_entries(view: GlossaryView) -> tuple[SearchEntry, ...]:
    """Return an entry for each word; a word that is not used finds the one that is."""
    page = SearchEntry(GLOSSARY, "Glossary", "")
    words = (
        SearchEntry(f"{GLOSSARY}#{term.id}", term.term, " ".join((term.means, *term.instead_of)))
        for term in view.terms
    )
    return (page, *words)
