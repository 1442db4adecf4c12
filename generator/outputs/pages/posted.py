"""The pages that say which cards hang where, and whether the one in front of you is current."""

from generator.outputs.address_links import AddressBook, Links
from generator.outputs.page import Page, Section
from generator.outputs.templating import render
from generator.views.addresses import CARDS, CURRENT, REPLACE
from generator.views.posted import PostedView


def posted_page(view: PostedView, book: AddressBook) -> Page:
    """Return the list of laminated copies."""
    html = render("posted/posted.j2", Links(book, CARDS), view=view)
    return Page(
        CARDS, "Wall cards", (Section(1, "page_top", "Wall cards", html),), kind="posted", listed=True
    )


def replace_page(view: PostedView, book: AddressBook) -> Page:
    """Return the list of copies to replace, to be printed and ticked off."""
    title = "Replace list"
    html = render("posted/replace.j2", Links(book, REPLACE), view=view)
    return Page(REPLACE, title, (Section(1, "page_top", title, html),), kind="posted")


def current_page(view: PostedView, book: AddressBook) -> Page:
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
