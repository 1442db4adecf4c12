"""A finished page: sections that any engine can take as they are."""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import escape

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


def page_path(address: str) -> str:
    """Return the file of an address; the same in both URL modes of the engine."""
    return f"{address}/index.html" if address else "index.html"


def join_sections(page: Page) -> str:
    """Return the body of the page as HTML, a heading before each section."""
    return "\n".join(part for section in page.sections for part in (heading(section), section.html) if part)


def heading(section: Section) -> str:
    """Return the heading of a section; one without a title has none."""
    if not section.title:
        return ""
    return (
        f'<h{section.level} id="{escape(section.anchor)}">{escape(section.title)}</h{section.level}>'
        if section.anchor
        else f"<h{section.level}>{escape(section.title)}</h{section.level}>"
    )


def page_anchors(page: Page) -> frozenset[str]:
    """Return every anchor on the page: of its sections, and every id inside them."""
    return frozenset(_anchors(page))


def _anchors(page: Page) -> Iterator[str]:
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
