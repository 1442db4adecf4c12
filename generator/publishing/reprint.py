"""A site written again without the engine, where only bodies, files' bytes and search entries have changed.

What the theme puts round a body does not depend on it: the new body takes the old one's place in the page as
it lies there. A file that stays gets one more name, in the new folder; nothing is written into one with two.
"""

import re
from collections.abc import Iterator
from pathlib import Path

from generator.outputs.offline import WORKER, changed_worker
from generator.outputs.page import Page, heads_of, join_sections, page_anchors, page_path, whole_page
from generator.outputs.search import add_entries
from generator.outputs.search_parts import index_files
from generator.outputs.site import Site
from generator.pipeline.kept import Kept
from generator.pipeline.parts import kept_page
from generator.publishing.imprint import Imprint
from generator.publishing.linked import link_files

_INDEX = re.compile(r"search/(search_index\.js(on)?|[0-9a-f]{12}/.*)")
_SCRIPT = b"<script>"  # of an engine's theme alone: the page's policy names each


def reprint(
    site: Site, target: Path, fresh: Path, spare: Path, last: Imprint, now: Imprint, kept: Kept
) -> frozenset[str] | None:
    """Write `fresh` from the site in `target`; None, with nothing written, where the engine is needed.

    `last` is the imprint of what lies there, `now` that of the site. `spare` is the site before the last one,
    if it was left: most of its files are the same. Returns every path at which not just the file lies that
    lay there in `target`. Raises OSError.
    """
    if last.frame != now.frame or not (target / WORKER).is_file():
        return None
    pages = dict(_pages(site, target, last, now, kept))
    if None in pages.values():
        return None
    files = {file.path: file.content for file in site.files if last.files[file.path] != now.files[file.path]}
    search = dict(_search(site, last, now))
    written = {path: html for path, html in pages.items() if html is not None} | files | search

    def replaced(path: str) -> bool:
        return path in written or path == WORKER or bool(search and _INDEX.fullmatch(path))

    worker = changed_worker((target / WORKER).read_text("utf-8"), replaced, written.items())
    if spare.exists():
        spare.rename(fresh)
    touched = link_files(target, fresh, replaced)
    for path, content in (written | {WORKER: worker.encode()}).items():
        (fresh / path).parent.mkdir(parents=True, exist_ok=True)
        (fresh / path).write_bytes(content)
    return touched | written.keys()


def _pages(
    site: Site, target: Path, last: Imprint, now: Imprint, kept: Kept
) -> Iterator[tuple[str, bytes | None]]:
    """Each page that has changed, None where its frame may have changed too."""
    for page in site.pages:
        path = page_path(page.address)
        if last.pages[path] != now.pages[path]:
            old = kept_page(kept, last.pages[path])
            yield path, _with_body((target / path).read_bytes(), old, whole_page(page)) if old else None


def _with_body(html: bytes, old: Page, new: Page) -> bytes | None:
    """A page as it lies there, with another body."""
    was, body = _body(old), _body(new)
    if _head(old) != _head(new) or page_anchors(old) != page_anchors(new):
        return None
    if html.count(was) != 1 or _SCRIPT in was or _SCRIPT in body:
        return None
    return html.replace(was, body)


def _body(page: Page) -> bytes:
    """As the engine writes it."""
    return join_sections(page).encode("utf-8", errors="xmlcharrefreplace")


def _head(page: Page) -> tuple[object, ...]:
    """All that stands outside the body."""
    return (page.title, page.description, page.kind, page.listed, heads_of(page))


def _search(site: Site, last: Imprint, now: Imprint) -> Iterator[tuple[str, bytes]]:
    if last.index and last.entries != now.entries:
        for name, text in index_files(add_entries(last.index, site.entries)).items():
            yield f"search/{name}", text.encode()
