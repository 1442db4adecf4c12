"""Pages of a build as pages of MkDocs: virtual files, past the Markdown parser."""

from collections import Counter
from collections.abc import Container, Iterable
from typing import Any

from markupsafe import escape
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page as EnginePage
from mkdocs.structure.toc import AnchorLink, TableOfContents

from generator.outputs.assets import page_assets
from generator.outputs.page import SitePage, heads_of, join_sections, page_anchors
from generator.outputs.site import Site
from generator.problems import NewelError


def add_site_files(
    files: Files, config: MkDocsConfig, site: Site, laid: Iterable[SitePage]
) -> dict[str, SitePage]:
    """Add a build's files and the pages to be `laid` out to the engine's; returns these by source path."""
    taken = Counter(source_path(page.address) for page in site.pages)
    for path, times in taken.items():
        if times > 1 or files.get_file_from_path(path) is not None:
            raise _taken(path)
    pages: dict[str, SitePage] = {}
    for page in laid:
        path = source_path(page.address)
        level = InclusionLevel.INCLUDED if page.listed else InclusionLevel.NOT_IN_NAV
        files.append(File.generated(config, path, content="", inclusion=level))
        pages[path] = page
    for file in {file.path: file for file in (*page_assets(), *site.files)}.values():
        files.append(File.generated(config, file.path, content=file.content))
    return pages


def source_path(address: str) -> str:
    """Return the path that the engine thinks the page of an address was read from."""
    return f"{address}/index.md" if address else "index.md"


def navigation(site: Site, files: Files, ours: Container[str]) -> list[Any]:
    """Return the navigation: our listed pages in their order, then what was written by hand.

    `ours` are the sources of our pages.
    """
    listed = [source_path(page.address) for page in site.pages if page.listed]
    written = sorted(
        (file.src_uri for file in files.documentation_pages() if file.src_uri not in ours),
        key=lambda path: (not path.endswith("index.md"), path),
    )
    return [*listed, {"For instructors": written}] if written else [*listed]


def mark_page(page: EnginePage, ours: SitePage) -> None:
    """Set what the engine would have read from front matter; its theme inserts all of it as HTML."""
    title = escape(ours.title)
    page.title = title
    page.meta = {"title": title, "search": {"exclude": True}, "kind": ours.kind}
    if ours.description:
        page.meta["description"] = escape(ours.description)
    page.edit_url = None


def fill_page(page: EnginePage, ours: SitePage) -> str:
    """Return the body of the page; sets its contents list and the anchors that links may use."""
    page.toc = contents_list(ours)
    page.present_anchor_ids = set(page_anchors(ours))
    return join_sections(ours)


def contents_list(page: SitePage) -> TableOfContents:
    """Return the sections that have a title and an anchor as the engine's tree."""
    roots: list[AnchorLink] = []
    open_links: list[AnchorLink] = []
    for level, anchor, title in heads_of(page):
        if not (title and anchor):
            continue
        link = AnchorLink(escape(title), anchor, level)
        open_links = [parent for parent in open_links if parent.level < level]
        (open_links[-1].children if open_links else roots).append(link)
        open_links.append(link)
    return TableOfContents(roots)


def _taken(path: str) -> NewelError:
    return NewelError(
        "page-taken",
        f'two pages want the address of "{path}"',
        "one address can show one page only",
        f'a page written by hand as "{path}" needs another name',
    )
