"""Links from page to page, checked against the pages and files of this build."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from urllib.parse import quote

from generator.outputs.page import page_path
from generator.problems import NewelError

PageLink = tuple[str, str, str]
FileLink = tuple[str, str]


@dataclass(frozen=True, slots=True)
class AddressBook:
    """Every address of the build with its anchors, and the path of every other file."""

    pages: Mapping[str, Collection[str]]
    files: frozenset[str] = field(default_factory=frozenset)

    def see_page(self, here: str, target: str, anchor: str) -> None:
        """Raise NewelError where there is no such page, or no such anchor on it."""
        anchors = self.pages.get(target)
        if anchors is None:
            raise _unknown(here, "page", target, self.pages)
        if anchor and anchor not in anchors:
            raise _unknown(here, f"anchor on {target or 'the home page'}", anchor, anchors)

    def see_file(self, here: str, path: str) -> None:
        """Raise NewelError where there is no such file."""
        if path not in self.files:
            raise _unknown(here, "file", path, self.files)


class OpenBook:
    """Takes every link as good and notes it, for pages that are made before all of them are known."""

    def __init__(self) -> None:
        self._pages: dict[PageLink, None] = {}
        self._files: dict[FileLink, None] = {}

    def see_page(self, here: str, target: str, anchor: str) -> None:
        """Note a link to a page."""
        self._pages[here, target, anchor] = None

    def see_file(self, here: str, path: str) -> None:
        """Note a link to a file."""
        self._files[here, path] = None

    @property
    def pages(self) -> tuple[PageLink, ...]:
        """What was linked to: from where, to which address, to which anchor on it."""
        return tuple(self._pages)

    @property
    def files(self) -> tuple[FileLink, ...]:
        """The files linked to: from where, and their paths."""
        return tuple(self._files)


Book = AddressBook | OpenBook


@dataclass(frozen=True, slots=True)
class Links:
    """The links of one page; `here` is its address."""

    book: Book
    here: str

    def page(self, target: str, anchor: str = "") -> str:
        """Return the relative link to an address, and an anchor on it; an unknown one raises NewelError."""
        self.book.see_page(self.here, target, anchor)
        if target == self.here:
            return f"#{quote(anchor)}" if anchor else "index.html"
        return relative(self.here, page_path(target)) + (f"#{quote(anchor)}" if anchor else "")

    def file(self, path: str) -> str:
        """Return the relative link to a file that is no page; an unknown one raises NewelError."""
        self.book.see_file(self.here, path)
        return relative(self.here, path)


def relative(here: str, path: str) -> str:
    """Return the way from a page's address to a path from the root; good on a server and in a folder."""
    depth = here.count("/") + 1 if here else 0
    return "../" * depth + quote(path)


def _unknown(here: str, what: str, wanted: str, known: Collection[str]) -> NewelError:
    near = get_close_matches(wanted, sorted(known), n=1)
    return NewelError(
        "unknown-link",
        f'the page "{here or "home"}" links to the {what} "{wanted}", which this build does not have',
        "a link on a published page must lead somewhere",
        f'did you mean "{near[0]}"?' if near else "declare what it names, or take the link away",
    )
