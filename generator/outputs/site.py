"""The result of a build before any engine has seen it."""

from collections.abc import Callable
from dataclasses import dataclass, field

from generator.outputs.page import SitePage
from generator.outputs.search import SearchEntry


@dataclass(frozen=True, slots=True)
class SiteFile:
    """A file of the site that is no page: its path from the root, with slashes, and its bytes."""

    path: str
    content: bytes


@dataclass(frozen=True, slots=True)
class KeptFile:
    """The same, its bytes fetched when they are asked for; `key` names all that they were made from."""

    path: str
    key: str
    fetch: Callable[[], bytes] = field(compare=False, repr=False)

    @property
    def content(self) -> bytes:
        """The bytes, fetched anew each time."""
        return self.fetch()


AnyFile = SiteFile | KeptFile
# Told the pages that are done and the pages there are.
Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class Site:
    """Everything to publish: name, language tag, pages, other files, search entries.

    `date` (ISO) is the day the build speaks of; it is written where an engine would write its own clock.
    """

    name: str
    pages: tuple[SitePage, ...]
    files: tuple[AnyFile, ...] = ()
    entries: tuple[SearchEntry, ...] = ()
    language: str = "en"
    date: str = "1970-01-01"
    draft: bool = False
