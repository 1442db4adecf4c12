"""The result of a build before any engine has seen it."""

from dataclasses import dataclass

from generator.outputs.page import Page
from generator.outputs.search import SearchEntry


@dataclass(frozen=True, slots=True)
class SiteFile:
    """A file of the site that is no page: its path from the root, with slashes, and its bytes."""

    path: str
    content: bytes


@dataclass(frozen=True, slots=True)
class Site:
    """Everything to publish: name, language tag, pages, other files, search entries.

    `date` (ISO) is the day the build speaks of; it is written where an engine would write its own clock.
    """

    name: str
    pages: tuple[Page, ...]
    files: tuple[SiteFile, ...] = ()
    entries: tuple[SearchEntry, ...] = ()
    language: str = "en"
    date: str = "1970-01-01"
    draft: bool = False
