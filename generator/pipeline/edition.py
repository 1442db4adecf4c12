"""The last build as one row, so that an edit which nobody else speaks of costs no more than its own pages.

A lab's pages speak of a procedure by its chapter alone. Where everything besides the procedures' own files is
as it was, and the chapters of the edited ones differ in nothing but pages, files' bytes and search texts, all
the rest of the site is as it was, too.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace

from generator.outputs.page import KeptPage
from generator.outputs.search import SearchEntry
from generator.outputs.site import KeptFile, Site
from generator.pipeline.chapter import Chapter, Wanted
from generator.pipeline.given_files import given_files
from generator.pipeline.kept import plain_key
from generator.pipeline.parts import Leaves, file_of, page_of
from generator.pipeline.slips import FileSlip, Leaf, Part, leaf_of
from generator.problems import Problem


@dataclass(frozen=True, slots=True)
class Edition:
    """A site that was built: `ground` names all it came from but the procedures, whose keys are `chapters`.

    Pages, entries and the files that the store has stand in the order of the site.
    """

    ground: str
    chapters: Mapping[str, str]
    problems: tuple[Problem, ...]
    name: str
    pages: tuple[Leaf, ...]
    entries: tuple[SearchEntry, ...]
    files: tuple[FileSlip, ...]


def find_edition(wanted: Wanted, leaves: Leaves, ground: str, chapters: Mapping[str, str]) -> Edition | None:
    """The last build, where it had the same ground and the same procedures."""
    found = leaves.last(_name(wanted), Edition, wanted.ground) if ground else None
    fits = found and found.ground == ground and [*found.chapters] == [*chapters]
    return found if fits else None


def keep_edition(wanted: Wanted, leaves: Leaves, edition: Edition) -> None:
    """Keep it in the place of the one before."""
    leaves.keep_last(_name(wanted), edition, wanted.ground)


def edition_of(
    wanted: Wanted, ground: str, chapters: Mapping[str, str], site: Site, problems: tuple[Problem, ...]
) -> Edition:
    """The edition of a site that was built."""
    given = {file.path for file in given_files(wanted)}
    pages = tuple(leaf_of(page) for page in site.pages if isinstance(page, KeptPage))
    kept = (file for file in site.files if isinstance(file, KeptFile) and file.path not in given)
    files = tuple(FileSlip(file.path, file.key) for file in kept)
    return Edition(ground, chapters, problems, site.name, pages, site.entries, files)


def revised(
    leaves: Leaves, last: Edition, chapters: Mapping[str, str], make: Callable[[str, str], Chapter]
) -> Edition | None:
    """The edition with the chapters that have another key, None where one tells others something new."""
    pages: dict[str, Leaf] = {}
    files: dict[str, FileSlip] = {}
    texts: dict[str, list[SearchEntry]] = {}
    for id, key in chapters.items():
        if key == last.chapters[id]:
            continue
        before, now = leaves.row(last.chapters[id], Chapter), make(id, key)
        if before is None or _told(before) != _told(now) or now.display is None:
            return None
        part = now.display.part
        pages |= {slip.address: leaf_of(slip) for slip in part.pages}
        files |= {slip.path: slip for slip in part.files}
        for entry in part.entries:
            texts.setdefault(entry.location, []).append(entry)
    return replace(
        last,
        chapters=chapters,
        pages=tuple(pages.get(leaf.address, leaf) for leaf in last.pages),
        files=tuple(files.get(slip.path, slip) for slip in last.files),
        entries=tuple(_entries(last.entries, texts)),
    )


def _told(chapter: Chapter) -> Chapter:
    """What others may say of a chapter: all but the keys of its pages and files, and what finds it."""
    if chapter.display is None:
        return chapter
    part = chapter.display.part
    bare = Part(
        tuple(replace(slip, key="") for slip in part.pages),
        tuple(SearchEntry(entry.location, "", "") for entry in part.entries),
        tuple(replace(slip, key="") for slip in part.files),
        part.problems,
    )
    return replace(chapter, display=replace(chapter.display, part=bare))


def _entries(
    entries: tuple[SearchEntry, ...], texts: Mapping[str, list[SearchEntry]]
) -> Iterator[SearchEntry]:
    """The entries, each of an edited chapter in the place of the one for the same location."""
    waiting = {location: iter(found) for location, found in texts.items()}
    for entry in entries:
        yield next(waiting[entry.location]) if entry.location in waiting else entry


def site_of(wanted: Wanted, leaves: Leaves, edition: Edition) -> Site:
    """The site of an edition."""
    lab = wanted.ground.study.lab.lab
    return Site(
        edition.name,
        tuple(page_of(leaves, leaf) for leaf in edition.pages),
        (*given_files(wanted), *(file_of(leaves, slip) for slip in edition.files)),
        edition.entries,
        str(lab.language),
        wanted.today.isoformat(),
        wanted.draft,
    )


def _name(wanted: Wanted) -> str:
    """Of the place where it is kept: one for each sort of build, not for each build."""
    return plain_key("edition", wanted.nouns.folder.shown, wanted.draft, wanted.preview, wanted.site_url)
