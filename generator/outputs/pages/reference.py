"""The page that lists every noun, field and verb of the model."""

from generator.outputs.address_links import Book, Links
from generator.outputs.page import Page, Section
from generator.outputs.search import SearchEntry
from generator.outputs.templating import render
from generator.views.addresses import MODEL
from generator.views.reference import ReferenceView

_TITLE = "Nouns, fields and verbs"
_VERBS = "verbs_of_a_step"


def reference_anchors(view: ReferenceView) -> frozenset[str]:
    """Return the anchors that other pages may link to: one for each noun, and that of the verbs."""
    return frozenset((_VERBS, *(noun.anchor for noun in view.nouns)))


def reference_page(view: ReferenceView, book: Book) -> Page:
    """Return the reference of the model."""
    links = Links(book, MODEL)
    sections = (
        Section(1, "page_top", _TITLE, render("reference/lead.j2", links)),
        Section(2, _VERBS, "Verbs of a step", render("reference/verbs.j2", links, verbs=view.verbs)),
        *(
            Section(2, noun.anchor, noun.title, render("reference/noun.j2", links, noun=noun, here=MODEL))
            for noun in view.nouns
        ),
    )
    says = "What may be written in a lab's files."
    return Page(MODEL, _TITLE, sections, description=says, kind="reference")


def reference_entry(view: ReferenceView) -> SearchEntry:
    """Return what the reference is found by: the names of nouns and fields."""
    names = " ".join(dict.fromkeys(field.name for noun in view.nouns for field in noun.fields))
    return SearchEntry(MODEL, _TITLE, names, boost=0.3)
