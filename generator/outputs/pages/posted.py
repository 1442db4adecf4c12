"""The pages that say which cards hang where, and whether the one in front of you is current."""

from generator.outputs.address_links import Book, Links
from generator.outputs.page import Page, Section
from generator.outputs.templating import render
from generator.views.addresses import CARDS, CURRENT, PRINT_ALL_PATH, REPLACE
from generator.views.posted import PostedView

PRINTS = "to_print"


def posted_page(view: PostedView, book: Book) -> Page:
    """Return the list of laminated copies, and of all that can be printed."""
    links = Links(book, CARDS)
    sections = [Section(1, "page_top", "Wall cards", render("posted/posted.j2", links, view=view))]
    if view.prints:
        everything = any(path == PRINT_ALL_PATH for group in view.prints for _, path, _ in group.files)
        html = render("posted/prints.j2", links, view=view, everything=everything)
        sections.append(Section(2, PRINTS, "To print", html))
    return Page(CARDS, "Wall cards", tuple(sections), kind="posted", listed=True)


def posted_anchors(view: PostedView) -> frozenset[str]:
    """Return the anchors that other pages may link to."""
    return frozenset((PRINTS,)) if view.prints else frozenset()


def replace_page(view: PostedView, book: Book) -> Page:
    """Return the list of copies to replace, to be printed and ticked off."""
    title = "Replace list"
    html = render("posted/replace.j2", Links(book, REPLACE), view=view)
    return Page(REPLACE, title, (Section(1, "page_top", title, html),), kind="posted")


def current_page(view: PostedView, book: Book) -> Page:
    """Return the page that a card's QR code opens."""
    links = Links(book, CURRENT)
    cards = {
        f"{card.procedure}/{card.card}": {
            "title": card.title,
            "issue": card.issue,
            "code": card.code,
            "withdrawn": card.withdrawn,
            "pdf": links.file(card.pdf) if card.pdf else "",
            "page": links.page(card.address) if card.address else "",
            "changes": dict(card.changes),
            "codes": dict(card.codes),
        }
        for card in view.cards
    }
    data = {"built": view.built, "cards": cards}
    html = render("posted/current.j2", links, view=view, data=data)
    title = "Is this card current?"
    return Page(CURRENT, title, (Section(1, "page_top", title, html),), kind="current")
