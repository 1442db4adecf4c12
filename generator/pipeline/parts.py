"""Finished parts of a site as rows of the store, made only where they must be."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import TypeVar, cast

from generator.outputs.address_links import AddressBook, OpenBook
from generator.outputs.page import KeptPage, Page, Section, heads_of
from generator.outputs.pages.sheets import TOP, Sheet
from generator.outputs.site import KeptFile, SiteFile
from generator.pipeline.kept import Kept, content_key, key_of
from generator.pipeline.looks import Ground, Watch
from generator.pipeline.memory import Memory
from generator.pipeline.slips import FileSlip, Leaf, Part, Slip, leaf_of
from generator.pipeline.written import read_row, value_of, write_row
from generator.problems import NewelError

Made = TypeVar("Made")


class Leaves:
    """The store of a build's texts and bytes; what the store does not take stays here.

    `memory` is that of a process which builds again and again; `pause` is called before each piece of work,
    and ends the build by raising.
    """

    def __init__(
        self, kept: Kept, memory: Memory | None = None, pause: Callable[[], None] = lambda: None
    ) -> None:
        self.kept = kept
        self.memory = memory
        self._pause = pause
        self._here: dict[str, bytes] = {}

    def put(self, key: str, content: bytes) -> None:
        """Keep what was made, for this build and the next."""
        if not self.kept.put(key, content):
            self._here[key] = content

    def get(self, key: str) -> bytes | None:
        """What was kept, None where it is not there or was spoilt."""
        found = self._here.get(key)
        return self.kept.get(key) if found is None else found

    def fetch(self, key: str) -> bytes:
        """What was kept; NewelError "store-lost" where the store has lost it meanwhile."""
        found = self.get(key)
        if found is None:
            raise NewelError("store-lost", "the store beside the site has lost a row", hint="build once more")
        return found

    def known(self, key: str, kind: type[Made], ground: Ground) -> Made | None:
        """What was made under this key, where every look-up of its making finds the same."""
        self._pause()
        ready = self.memory.find(key, ground) if self.memory else None
        if isinstance(ready, kind):
            return ready
        row = self.kept.get(key) if key else None
        if row is None:
            return None
        looks, made = read_row(row)
        if not ground.holds(looks):
            return None
        found = value_of(kind, made)
        if self.memory:
            self.memory.keep(key, looks, found, ground)
        return found

    def row(self, key: str, kind: type[Made]) -> Made | None:
        """What was made under this key, whether it still holds or not."""
        row = self.kept.get(key) if key else None
        return value_of(kind, read_row(row)[1]) if row else None

    def last(self, name: str, kind: type[Made], ground: Ground) -> Made | None:
        """What was kept under a name that is always the same."""
        ready = self.memory.find(name, ground) if self.memory else None
        return ready if isinstance(ready, kind) else self.row(name, kind)

    def keep_last(self, name: str, made: object, ground: Ground) -> None:
        """Keep it under the name, in the place of what was there."""
        if self.memory:
            self.memory.keep(name, {}, made, ground)
        else:
            self.kept.put(name, write_row(({}, made)))

    def made(self, key: str, ground: Ground, make: Callable[[Watch], Made]) -> Made:
        """What is made now, kept under the key with what was looked up.

        The key names all that it is made from beside the nouns of the lab.
        """
        watch = Watch(ground)
        fresh = make(watch)
        if key:
            self.kept.put(key, write_row((watch.looks, fresh)))
        if key and self.memory:
            self.memory.keep(key, watch.looks, fresh, ground)
        return fresh


def page_of(leaves: Leaves, slip: Slip | Leaf) -> KeptPage:
    """The page of a slip, its HTML fetched when it is asked for."""

    def fetch() -> tuple[Section, ...]:
        return value_of(tuple[Section, ...], read_row(leaves.fetch(slip.key))[1])

    address, title, description, kind, listed, heads, key = leaf_of(slip)
    fixed = cast(tuple[tuple[int, str, str], ...], tuple(map(tuple, heads)))
    return KeptPage(address, title, description, kind, listed, fixed, key, fetch)


def kept_page(kept: Kept, key: str) -> Page | None:
    """The whole page that was laid under a key, None where the store has lost it."""
    row = kept.get(key)
    if row is None:
        return None
    found, sections = read_row(row)
    slip = value_of(Slip, found)
    body = value_of(tuple[Section, ...], sections)
    return Page(slip.address, slip.title, body, slip.description, slip.kind, slip.listed)


def file_of(leaves: Leaves, slip: FileSlip) -> KeptFile:
    """The file of a slip, its bytes fetched when they are asked for."""
    return KeptFile(slip.path, slip.key, lambda: leaves.fetch(slip.key))


def lay_sheet(leaves: Leaves, sheet: Sheet) -> Slip:
    """Render a page, unless one of the same view was rendered before."""
    key = key_of("page", sheet.address, sheet.view)
    row = leaves.get(key) if key else None
    if row is not None:
        return replace(value_of(Slip, read_row(row)[0]), anchors=_anchors(sheet))
    book = OpenBook()
    page = sheet.make(book)
    slip = _slip(page, sheet, key or key_of("made", page), book)
    leaves.put(slip.key, write_row((slip, page.sections)))
    return slip


def _anchors(sheet: Sheet) -> tuple[str, ...]:
    return (TOP, *sorted(sheet.anchors))


def _slip(page: Page, sheet: Sheet, key: str, book: OpenBook) -> Slip:
    links = tuple((target, anchor) for _, target, anchor in book.pages)
    files = tuple(path for _, path in book.files)
    return Slip(
        page.address, page.title, page.description, page.kind, page.listed, heads_of(page),
        _anchors(sheet), key, links, files,
    )  # fmt: skip


def lay_sheets(leaves: Leaves, sheets: Iterable[Sheet]) -> Part:
    """The part of some pages."""
    found = tuple(sheets)
    slips = tuple(lay_sheet(leaves, sheet) for sheet in found)
    return Part(slips, tuple(entry for sheet in found for entry in sheet.entries))


def keep_files(leaves: Leaves, files: Iterable[SiteFile]) -> tuple[FileSlip, ...]:
    """Files put into the store by their content."""
    slips: list[FileSlip] = []
    for file in files:
        slips.append(FileSlip(file.path, content_key("file", file.content)))
        leaves.put(slips[-1].key, file.content)
    return tuple(slips)


def see_links(leaves: Leaves, parts: Iterable[Part], files: frozenset[str]) -> None:
    """Look every link of every page up; one that leads nowhere raises NewelError.

    What was found before among the same addresses and files, the memory of the leaves knows.
    """
    slips = tuple(slip for part in parts for slip in part.pages)
    addresses = {slip.address: slip.anchors for slip in slips}
    book, memory = AddressBook(addresses, files), leaves.memory
    for slip in memory.unlinked((addresses, files), slips) if memory else slips:
        for target, anchor in slip.links:
            book.see_page(slip.address, target, anchor)
        for path in slip.files:
            book.see_file(slip.address, path)
    if memory:
        memory.keep_linked((addresses, files), slips)
