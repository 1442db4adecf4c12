"""Links from page to page, checked against the pages and files of this build while a page is rendered."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from difflib import get_close_matches
from urllib.parse import quote

from generator.outputs.page import page_path
from generator.problems import NewelError


@dataclass(frozen=True, slots=True)
class AddressBook:
    """Every address of the build with its anchors, and the path of every other file."""

    pages: Mapping[str, frozenset[str]]
    files: frozenset[str] = field(default_factory=frozenset)


@dataclass(frozen=True, slots=True)
class Links:
    """The links of one page; `here` is its address."""

    book: AddressBook
    here: str

    def page(self, target: str, anchor: str = "") -> str:
        """Return the relative link to an address, and an anchor on it; an unknown one raises NewelError."""
        anchors = self.book.pages.get(target)
        if anchors is None:
            raise _unknown(self.here, "page", target, self.book.pages)
        if anchor and anchor not in anchors:
            raise _unknown(self.here, f"anchor on {target or 'the home page'}", anchor, anchors)
        if target == self.here:
            return f"#{quote(anchor)}" if anchor else "index.html"
        return relative(self.here, page_path(target)) + (f"#{quote(anchor)}" if anchor else "")

    def file(self, path: str) -> str:
        """Return the relative link to a file that is no page; an unknown one raises NewelError."""
        if path not in self.book.files:
            raise _unknown(self.here, "file", path, self.book.files)
        return relative(self.here, path)


def relative(here: str, path: str) -> str:
    """Return the way from a page's address to a path from the root; good on a server and in a folder."""
    depth = here.count("/") + 1 if here else 0
    return "../" * depth + quote(path)


def _unknown(here: str, what: str, wanted: str, known: Mapping[str, object] | frozenset[str]) -> NewelError:
    near = get_close_matches(wanted, sorted(known), n=1)
    return NewelError(
        "unknown-link",
        f'the page "{here or "home"}" links to the {what} "{wanted}", which this build does not have',
        "a link on a published page must lead somewhere",
        f'did you mean "{near[0]}"?' if near else "declare what it names, or take the link away",
    )
