"""Which pages the engine lays out itself, and the writing of all others in frames taken from it."""

import re
from collections.abc import Callable, Iterable
from pathlib import Path
from types import SimpleNamespace
from typing import Any
from urllib.parse import urljoin, urlsplit

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import Files

from generator.mkdocs_plugin.virtual_pages import source_path
from generator.outputs.frames import (
    MODEL,
    Frame,
    FramesUnfitError,
    Sort,
    frame_of,
    model_page,
    proof_pages,
    sort_of,
)
from generator.outputs.page import Page, SitePage, page_path

_LINKED = re.compile(r"([\w.-]+)/index\.(?:md|html)")
# With any other plugin, with hooks or with templates of the lab's own, a page may differ in more than words.
_KNOWN = frozenset(("material/search", "search", "newel"))


def can_frame(config: MkDocsConfig) -> bool:
    """Whether nothing but the theme and our own events has a hand in the pages."""
    own = config.theme.custom_dir or config.hooks or config.nav is not None
    return not own and set(config.plugins) <= _KNOWN


class Framing:
    """One build: the pages for the engine, with models and proofs among them, and the rest for frames."""

    def __init__(self, pages: tuple[SitePage, ...], files: Files) -> None:
        linked = _linked_names(files)
        proofs = proof_pages(page for page in pages if page.address.rsplit("/", 1)[-1] not in linked)
        self._pages = pages
        self._proofs = {source_path(page.address): (sort, page) for sort, page in proofs.items()}
        models = {sort: model_page(sort) for sort in proofs}
        self.models = {source_path(model.address): model for model in models.values()}
        self._sorts = {source_path(model.address): sort for sort, model in models.items()}
        proved = {page.address for page in proofs.values()}
        self.rest = tuple(
            page
            for page in pages
            if page.address not in proved
            and page.address.rsplit("/", 1)[-1] not in linked
            and sort_of(page) in proofs
        )
        self._seen: dict[str, str] = {}

    @property
    def for_engine(self) -> tuple[SitePage, ...]:
        """What the engine lays out, models last."""
        rest = {page.address for page in self.rest}
        return (*(page for page in self._pages if page.address not in rest), *self.models.values())

    def take(self, path: str, html: str) -> str:
        """Note what the engine made of a model or a proof; returns what is to be written."""
        if path in self.models or path in self._proofs:
            self._seen[path] = html
        return "" if path in self.models else html

    def write_rest(self, folder: Path, told: Callable[[], None]) -> None:
        """Write the rest; raises FramesUnfitError before anything is written."""
        frames = dict(self._frames())
        for path, (sort, page) in self._proofs.items():
            if frames[sort].around(page) != self._seen[path]:
                raise FramesUnfitError
        for page in self.rest:
            frame = frames[sort_of(page)]  # type: ignore[index]
            target = folder / page_path(page.address)
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(frame.around(page).encode("utf-8", errors="xmlcharrefreplace"))
            told()

    def _frames(self) -> Iterable[tuple[Sort, Frame]]:
        for path, model in self.models.items():
            frame = frame_of(model, self._seen.get(path, ""))
            if frame is None:
                raise FramesUnfitError
            yield self._sorts[path], frame

    def sitemap(self, engine_files: Iterable[Any], site_url: str | None, date: str) -> list[Any]:
        """The pages for the map of the site as if the engine had laid out all of them, in its order."""
        found = {file.src_uri: file for file in engine_files if file.src_uri not in self.models}
        ours = {source_path(page.address): page for page in self._pages}
        written = [file for path, file in found.items() if path not in ours]
        return [*written, *(found.get(path) or _listed(page, site_url, date) for path, page in ours.items())]


def _listed(page: SitePage, site_url: str | None, date: str) -> SimpleNamespace:
    address = urljoin(site_url, page_path(page.address)) if site_url else None
    below = urlsplit(address).path if address else None
    told = SimpleNamespace(is_link=False, canonical_url=address, abs_url=below, update_date=date)
    return SimpleNamespace(page=told)


def _linked_names(files: Files) -> frozenset[str]:
    """The last part of every address that a hand-written page may link to: the engine checks such links."""
    texts = (file.content_string for file in files.documentation_pages())
    return frozenset(name for text in texts for name in _LINKED.findall(text))


def is_model(page: SitePage | None) -> bool:
    """Whether a page is one of the models."""
    return isinstance(page, Page) and MODEL in page.address
