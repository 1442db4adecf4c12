"""What the last site was laid out from, kept in the store: held against the next, page by page."""

import hashlib
from collections.abc import Mapping
from dataclasses import dataclass

from generator.outputs.page import KeptPage, SitePage, page_path
from generator.outputs.site import AnyFile, KeptFile, Site
from generator.pipeline.kept import Kept, plain_key
from generator.pipeline.written import read_row, value_of, write_row


@dataclass(frozen=True, slots=True)
class Imprint:
    """A site as it lies in its folder, whose `seal` says that nobody has touched it since.

    `frame` names all that the engine saw of it besides bodies, files' bytes and entries; `pages` and `files`
    are keys by path; `entries` is the key of those for the search, `index` the engine's own index ("" where
    it has none).
    """

    seal: str
    frame: str
    pages: Mapping[str, str]
    files: Mapping[str, str]
    entries: str
    index: str


def imprint_of(site: Site, beside: str) -> Imprint | None:
    """The imprint of a site to be written; None where its pages do not say what they were made from.

    `beside` names all that the engine reads besides the site: its settings, pages written by hand, itself.
    """
    pages = {page_path(page.address): page.key for page in site.pages if isinstance(page, KeptPage)}
    if not beside or len(pages) != len(site.pages):
        return None
    files = {file.path: _key(file) for file in site.files}
    told = (beside, site.name, site.language, site.date, site.draft, tuple(map(_told, site.pages)))
    frame = plain_key("frame", *told, tuple(files))
    return Imprint("", frame, pages, files, plain_key("entries", site.entries), "")


def _told(page: SitePage) -> str | tuple[str, str]:
    """What others show of a page: its address, and its title if the navigation names it."""
    return (page.address, page.title) if page.listed else page.address


def _key(file: AnyFile) -> str:
    return file.key if isinstance(file, KeptFile) else hashlib.sha256(file.content).hexdigest()


def find_imprint(kept: Kept, folder: str) -> Imprint | None:
    """That of the last site in a folder of this name, None where there is none."""
    row = kept.get(plain_key("imprint", folder))
    return value_of(Imprint, read_row(row)) if row else None


def keep_imprint(kept: Kept, folder: str, imprint: Imprint) -> None:
    """Keep it in the place of the one before."""
    kept.put(plain_key("imprint", folder), write_row(imprint))
