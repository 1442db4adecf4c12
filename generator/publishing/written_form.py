"""The same pages as Markdown files, for an engine that runs no plugins."""

import json
from pathlib import Path

from markupsafe import escape

from generator.outputs.page import Section, SitePage
from generator.outputs.site import Site


def write_pages(site: Site, folder: Path) -> None:
    """Write every page as `<address>/index.md` and every other file at its path, below a folder of documents.

    A heading is Markdown with its anchor (the extension attr_list), a section the HTML of the build, which
    any engine passes through as it is.
    """
    for page in site.pages:
        path = folder / page.address / "index.md"
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(page_text(page), encoding="utf-8")
    for file in site.files:
        path = folder / file.path
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(file.content)


def page_text(page: SitePage) -> str:
    """Return the file of a page: front matter, then headings and sections."""
    # A theme inserts both as HTML.
    fields: dict[str, object] = {"title": str(escape(page.title)), "search": {"exclude": True}}
    if page.description:
        fields["description"] = str(escape(page.description))
    front = "\n".join(f"{name}: {json.dumps(value, ensure_ascii=False)}" for name, value in fields.items())
    return "\n\n".join((f"---\n{front}\n---", *(_section_text(section) for section in page.sections), ""))


def _section_text(section: Section) -> str:
    if not section.title:
        return section.html
    anchor = f" {{#{section.anchor}}}" if section.anchor else ""
    return f"{'#' * section.level} {_plain(section.title)}{anchor}\n\n{section.html}"


def _plain(title: str) -> str:
    """A title in which nothing is Markdown: signs that could be are written as references."""
    text = str(escape(title))
    return "".join(f"&#{ord(letter)};" if letter in "*_`[]{}\\#!~^|=+$:@" else letter for letter in text)
