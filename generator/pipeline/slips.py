"""Pages and files of a finished part without their text and bytes, which lie in the store."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from generator.outputs.page import KeptPage
from generator.outputs.search import SearchEntry
from generator.problems import Problem


@dataclass(frozen=True, slots=True)
class Slip:
    """A page without its HTML, in the store under `key`; `links` and `files` are what it leads to."""

    address: str
    title: str
    description: str
    kind: str
    listed: bool
    heads: tuple[tuple[int, str, str], ...]
    anchors: tuple[str, ...]
    key: str
    links: tuple[tuple[str, str], ...]
    files: tuple[str, ...]


class Leaf(NamedTuple):
    """A slip of a page whose links were seen. Out of the store, heads are lists: nothing is looked into."""

    address: str
    title: str
    description: str
    kind: str
    listed: bool
    heads: Sequence[Sequence[int | str]]
    key: str


@dataclass(frozen=True, slots=True)
class FileSlip:
    """A file without its bytes, which lie in the store under `key`."""

    path: str
    key: str


@dataclass(frozen=True, slots=True)
class Part:
    """Pages, search entries and files that were made together, and what could not be printed of them."""

    pages: tuple[Slip, ...] = ()
    entries: tuple[SearchEntry, ...] = ()
    files: tuple[FileSlip, ...] = ()
    problems: tuple[Problem, ...] = ()


def leaf_of(page: Slip | KeptPage | Leaf) -> Leaf:
    """A page or a slip without what it leads to."""
    return Leaf(page.address, page.title, page.description, page.kind, page.listed, page.heads, page.key)
