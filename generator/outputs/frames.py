"""What the theme puts round a body, taken from the engine once for each sort of page, and put round others.

A sort's frame is cut out of a model page whose words are marks, and is used only where it gives one real page
of the sort byte for byte. Nothing is known here of how the theme writes a page.
"""

import re
from collections.abc import Iterable
from dataclasses import dataclass

from markupsafe import escape

from generator.outputs.page import Page, Section, SitePage, heads_of, join_sections, page_path

# (kind of page, first part of its address, depth of it, whether it is described): links in the frame are
# relative, and lead elsewhere in another folder.
Sort = tuple[str, str, int, bool]

_PLAIN = re.compile(r"[A-Za-z0-9._/-]+")
_CARE = re.compile(r"[&<>\"'\s]{2}|[&<>\"'\n\t]")
# A theme gives a page without a heading one of its own.
MODEL_BODY = "<h1>nwmodelbody</h1>"
MODEL, _TITLE, _TOLD = "nw-model-page", "nwmodeltitle", "nwmodeldescription"
_FIRST, _FIRST_TITLE, _SECOND, _SECOND_TITLE = "nwmodelone", "nwmodelheadone", "nwmodeltwo", "nwmodelheadtwo"


class FramesUnfitError(Exception):
    """A frame did not give the page that the engine gave; the engine must lay out every page."""


@dataclass(frozen=True, slots=True)
class Frame:
    """The text round title, description, address, body and contents list of a sort, with marks in it.

    `before` ends where the first anchor of the contents list begins, `row` goes from there to the second
    anchor, `after` begins at the last.
    """

    address: str
    before: str
    row: str
    after: str

    def around(self, page: SitePage) -> str:
        """The whole page."""
        rows = [(anchor, str(escape(title))) for anchor, title in _listed(page)]
        parts = [self.row.replace(_FIRST, anchor).replace(_FIRST_TITLE, title) for anchor, title in rows[:-1]]
        anchor, title = rows[-1]
        end = self.after.replace(_SECOND, anchor).replace(_SECOND_TITLE, title)
        html = "".join((self.before, *parts, end))
        html = html.replace(self.address, page_path(page.address)).replace(_TITLE, page.title)
        html = html.replace(_TOLD, str(escape(page.description)))
        return html.replace(MODEL_BODY, join_sections(page))


def sort_of(page: SitePage) -> Sort | None:
    """The sort of a page; None for one that the engine must lay out itself."""
    heads = heads_of(page)
    plain = _PLAIN.fullmatch(page.address) and not _CARE.search(page.title)
    contents = [level for level, anchor, title in heads if anchor and title]
    flat = len(contents) > 1 and contents[0] == 1 and set(contents[1:]) == {2}
    if page.listed or not plain or not flat or _has_marks(page):
        return None
    top, _, below = page.address.partition("/")
    return (page.kind, top, page.address.count("/"), bool(page.description)) if below else None


def _has_marks(page: SitePage) -> bool:
    heads = (text for _, anchor, title in heads_of(page) for text in (anchor, title))
    return any("nwmodel" in text for text in (page.title, page.description, *heads))


def model_page(sort: Sort) -> Page:
    """A page of a sort whose words are marks."""
    kind, top, depth, described = sort
    mark = f"{MODEL}-{kind}-{depth}-{int(described)}"
    address = "/".join([top, *[mark] * depth])
    sections = (
        Section(1, "page_top", _TITLE, MODEL_BODY),
        Section(2, _FIRST, _FIRST_TITLE, ""),
        Section(2, _SECOND, _SECOND_TITLE, ""),
    )
    return Page(address, _TITLE, sections, _TOLD if described else "", kind)


def frame_of(model: Page, html: str) -> Frame | None:
    """The frame in a model page that the engine laid out; None where its marks are not where they must be."""
    once = (MODEL_BODY, _FIRST, _SECOND, _FIRST_TITLE, _SECOND_TITLE)
    if any(html.count(mark) != 1 for mark in once):
        return None
    first, second = html.index(_FIRST), html.index(_SECOND)
    row = html[first:second]
    if first > second or _FIRST_TITLE not in row or MODEL_BODY in row:
        return None
    return Frame(page_path(model.address), html[:first], row, html[second:])


def _listed(page: SitePage) -> list[tuple[str, str]]:
    return [(anchor, title) for level, anchor, title in heads_of(page) if anchor and title and level > 1]


def proof_pages(pages: Iterable[SitePage]) -> dict[Sort, SitePage]:
    """For each sort the page that is hardest to frame: the one with most signs that need care."""
    hardest: dict[Sort, tuple[int, SitePage]] = {}
    for page in pages:
        sort = sort_of(page)
        if sort:
            care = len(_CARE.findall(page.description)) + len(heads_of(page))
            if sort not in hardest or care > hardest[sort][0]:
                hardest[sort] = (care, page)
    return {sort: page for sort, (_, page) in hardest.items()}
