"""Addresses that the engine's own file gives: where the site is published, and where its files are edited."""

import os
import re
from dataclasses import dataclass
from pathlib import Path
from urllib.parse import quote, urlsplit

_WEB = re.compile(r"https?://\S+")
_FROM_SYSTEM = re.compile(r"!ENV\s+(?:\[(?P<row>[^\]]*)\]|(?P<name>\w+))")
# Where the two forges of our recipes open a file for editing, below the address of a repository.
_FORGES = (("github", "edit/main/"), ("gitlab", "-/edit/main/"))


@dataclass(frozen=True, slots=True)
class EditAddress:
    """Where a file of the lab is edited: an address with {path} and {line}, and the folder of paths."""

    template: str
    home: Path

    def of(self, file: Path) -> str:
        """The address of a file, {line} still to be filled in it; "" for a file outside the folder."""
        path = file.resolve()
        if not path.is_relative_to(self.home):
            return ""
        return self.template.replace("{path}", quote(path.relative_to(self.home).as_posix()))


def site_address(folder: Path) -> str:
    """`site_url` of the mkdocs.yml beside or above a lab's folder, with a slash; empty without one."""
    _, text = _engine_file(folder)
    found = _web_setting(text, "site_url")
    return found.rstrip("/") + "/" if found else ""


def edit_address(folder: Path) -> EditAddress | None:
    """Where the lab's files are edited; None where the mkdocs.yml beside or above its folder does not say.

    `edit_link` under the plugin gives the whole address with {path} and {line}. Otherwise it is `repo_url`
    with `edit_uri`, which may lead to the folder of pages (`docs_dir`) as the engine wants it; without an
    `edit_uri`, GitHub and GitLab are known to edit the branch main.
    """
    home, text = _engine_file(folder)
    whole = _setting(text, "edit_link", r"[ \t]+")
    if _WEB.fullmatch(whole) and "{path}" in whole:
        return EditAddress(whole, home)
    repo = _web_setting(text, "repo_url").rstrip("/")
    way = _setting(text, "edit_uri")
    if way:
        pages = _setting(text, "docs_dir").strip("/") or "docs"
        way = way.rstrip("/").removesuffix(pages).rstrip("/") + "/"
    else:
        way = next((way for name, way in _FORGES if name in (urlsplit(repo).hostname or "")), "")
    if not way or not (repo or _WEB.fullmatch(way)):
        return None
    base = way if _WEB.fullmatch(way) else f"{repo}/{way.lstrip('/')}"
    return EditAddress(f"{base}{{path}}#L{{line}}", home)


def _engine_file(folder: Path) -> tuple[Path, str]:
    """The folder and the text of the mkdocs.yml that speaks of a lab."""
    for home in (folder.resolve(), folder.resolve().parent):
        file = home / "mkdocs.yml"
        if file.is_file():
            return home, file.read_text(encoding="utf-8", errors="replace")
    return folder.resolve(), ""


def _web_setting(text: str, key: str) -> str:
    found = _setting(text, key)
    return found if _WEB.fullmatch(found) else ""


def _setting(text: str, key: str, indent: str = "") -> str:
    """A plain value, or one that the engine takes from the system (`!ENV NAME`, `!ENV [NAME, "else"]`)."""
    found = re.search(rf"^{indent}{key}:[ \t]*(.*)$", text, re.MULTILINE)
    value = re.sub(r"(^|\s)#.*$", "", found[1]).strip() if found else ""
    asked = _FROM_SYSTEM.fullmatch(value)
    if asked is None:
        return _bare(value)
    row = [_bare(part) for part in (asked["row"] or asked["name"]).split(",")]
    names, other = (row[:-1], row[-1]) if len(row) > 1 else (row, "")
    return next((os.environ[name] for name in names if name in os.environ), other)


def _bare(text: str) -> str:
    return text.strip().strip("\"'")
