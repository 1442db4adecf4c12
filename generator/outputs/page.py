"""A finished page: sections that any engine can take as they are."""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

from generator.outputs.escaping import escape_text

_IDS = re.compile(r'\sid="([^"]+)"')
_UNFIT = re.compile(r"[\t\x00-\x08\x0b-\x1f\x7f]|\smarkdown=|^ {4}", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Section:
    """A heading (level 1 to 6, plain-text title, stable anchor) and one closed <section> or <div>."""

    level: int
    anchor: str
    title: str
    html: str


@dataclass(frozen=True, slots=True)
class Page:
    """An address ("procedures/x", "" for the home page), a plain-text title and its sections.

    `kind` names the sort of page for the style sheet and the scripts; `listed` puts it into the navigation.
    The first section has level 1 and carries the title of the page.
    """

    address: str
    title: str
    sections: tuple[Section, ...]
    description: str = ""
    kind: str = "page"
    listed: bool = False


@dataclass(frozen=True, slots=True)
class KeptPage:
    """A page whose sections are fetched when they are asked for; `heads` are they without their HTML.

    `key` names all that the sections were made from: two pages of one key are the same page.
    """

    address: str
    title: str
    description: str
    kind: str
    listed: bool
    heads: tuple[tuple[int, str, str], ...]
    key: str
    fetch: Callable[[], tuple[Section, ...]] = field(compare=False, repr=False)

    @property
    def sections(self) -> tuple[Section, ...]:
        """The sections, fetched anew each time."""
        return self.fetch()


SitePage = Page | KeptPage


def heads_of(page: SitePage) -> tuple[tuple[int, str, str], ...]:
    """Level, anchor and title of each section."""
    if isinstance(page, KeptPage):
        return page.heads
    return tuple((section.level, section.anchor, section.title) for section in page.sections)


def whole_page(page: SitePage) -> Page:
    """The same page with its sections in it."""
    if isinstance(page, Page):
        return page
    return Page(page.address, page.title, page.sections, page.description, page.kind, page.listed)


def page_path(address: str) -> str:
    """Return the file of an address; the same in both URL modes of the engine."""
    return f"{address}/index.html" if address else "index.html"


def join_sections(page: SitePage) -> str:
    """Return the body of the page as HTML, a heading before each section."""
    return "\n".join(part for section in page.sections for part in (heading(section), section.html) if part)


def heading(section: Section) -> str:
    """Return the heading of a section; one without a title has none."""
    if not section.title:
        return ""
    anchor = f' id="{escape_text(section.anchor)}"' if section.anchor else ""
    return f"<h{section.level}{anchor}>{escape_text(section.title)}</h{section.level}>"


def page_anchors(page: SitePage) -> frozenset[str]:
    """Return every anchor on the page: of its sections, and every id inside them."""
    return frozenset(_anchors(page))


def _anchors(page: SitePage) -> Iterator[str]:
    for section in page.sections:
        if section.anchor and section.title:
            yield section.anchor
        yield from _IDS.findall(section.html)


def find_unfit(section: Section) -> str:
    """Say what in a section an engine's Markdown reader would take for its own; "" when nothing is."""
    html = section.html
    if not html.startswith(("<section", "<div")) or not html.endswith(("</section>", "</div>")):
        return "a section is one closed <section> or <div>"
    found = _UNFIT.search(html)
    return f"characters that an engine reads as its own: {found.group()!r}" if found else ""
