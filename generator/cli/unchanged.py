"""Whether a site still is what a build would write, told from a list of files before anything is imported."""

import hashlib
import json
import os
import re
import sys
from collections.abc import Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

# path -> size, time of the last change in ns, SHA-256 ("" where it is not looked at)
Files = dict[str, tuple[int, int, str]]
# A mkdocs.yml that says one of these may read files that are not known here.
_FARTHER = re.compile(
    r"hooks:|custom_dir|INHERIT|!ENV|extra_|"
    r"^[ \t]+- (?!search\b|newel\b|admonition\b|attr_list\b|tables\b|toc\b)",
    re.MULTILINE,
)
_NOT_READ = (".newel", ".git")
_DOCS = re.compile(r"^docs_dir:[ \t]*[\"']?([^\s\"'#]+)", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Before:
    """What a build begins with: the files that it will read, and what it was asked for; None: not known."""

    files: Files | None
    asked: tuple[object, ...]


def guess_folder(given: Path) -> Path:
    """Where the lab's folder will be found; reading finds out, and takes its time for it."""
    folders = (given, given / "procedures")
    return next((it for it in folders if (it / "lab.yml").is_file() or (it / "lab").is_dir()), given)


def look_before(lab: Path, config: Path, target: Path, asked: tuple[object, ...]) -> Before:
    """Size and time of all that a build reads, taken before it reads; `config` may not be there."""
    try:
        return Before(dict(_read_files(lab, config, target)), (*asked, *_program()))
    except (OSError, _UnknownError):
        return Before(None, asked)


class _UnknownError(Exception):
    """There is more to read than can be listed here."""


def _read_files(lab: Path, config: Path, target: Path) -> Iterator[tuple[str, tuple[int, int, str]]]:
    engines = [lab / "mkdocs.yml", lab.resolve().parent / "mkdocs.yml", config]
    text = config.read_text(encoding="utf-8", errors="replace") if config.is_file() else ""
    if _FARTHER.search(text):
        raise _UnknownError
    docs = _DOCS.search(text)
    pages = config.parent / (docs[1] if docs else "docs") if text else None
    yield from ((str(path), _stat(path)) for path in engines if path.is_file())
    for folder in (lab, *([pages] if pages else [])):
        for path, size, time in _below(str(folder), (str(target),)):
            yield path, (size, time, "")


def is_unchanged(note: Path, target: Path, before: Before) -> dict[str, Any] | None:
    """What was noted when the site was written, where a build would write the same; else None.

    A file with another time is compared by its content.
    """
    try:
        noted = json.loads(note.read_bytes())
        same = noted["asked"] == _as_json(before.asked) and before.files is not None
        same = same and noted["site"] == _as_json(_site(target))
        same = same and noted["files"].keys() == (before.files or {}).keys()
        if same and all(_holds(path, row, before) for path, row in noted["files"].items()):
            told: dict[str, Any] = noted["told"]
            return told
    except (OSError, ValueError, KeyError, TypeError, _UnknownError):
        return None
    return None


def note_site(note: Path, target: Path, before: Before, told: Mapping[str, object]) -> None:
    """Note what the site was written from; a fault costs time at the next build and nothing else."""
    if before.files is None:
        return
    with suppress(OSError, _UnknownError):
        files = {path: (*row[:2], _digest(path)) for path, row in before.files.items()}
        noted = {"asked": before.asked, "files": files, "site": _site(target), "told": told}
        fresh = note.with_suffix(".part")
        fresh.write_text(json.dumps(noted), encoding="utf-8")
        fresh.replace(note)


def _holds(path: str, row: list[Any], before: Before) -> bool:
    size, time, _ = (before.files or {})[path]
    return bool(size == row[0] and (time == row[1] or _digest(path) == row[2]))


def _as_json(value: object) -> Any:
    return json.loads(json.dumps(value))


def _stat(path: Path) -> tuple[int, int, str]:
    found = path.stat()
    return found.st_size, _time(found), ""


def _time(found: os.stat_result) -> int:
    """When a file was changed: by what it says, which anybody can set, and by what the system says."""
    return found.st_mtime_ns + found.st_ctime_ns


def _digest(path: str) -> str:
    return hashlib.sha256(Path(path).read_bytes()).hexdigest()


def _site(target: Path) -> str:
    """One digest of the path, size and time of every file of the written site."""
    rows = sorted(_below(str(target)))
    return hashlib.sha256(repr([(p[len(str(target)) :], s, t) for p, s, t in rows]).encode()).hexdigest()


def _program() -> Iterator[object]:
    """The program itself: every file of ours by size and time, the names and versions of all packages."""
    ours = sorted(row for row in _below(str(Path(__file__).parent.parent)) if not row[0].endswith(".pyc"))
    yield hashlib.sha256(repr(ours).encode()).hexdigest()
    yield hashlib.sha256("\n".join(_packages()).encode()).hexdigest()
    yield sys.version
    yield os.environ.get("SOURCE_DATE_EPOCH", "")


def _packages() -> Iterator[str]:
    for folder in sys.path:
        if folder.endswith("-packages") and Path(folder).is_dir():
            names = (path.name for path in Path(folder).iterdir())
            yield from sorted(name for name in names if name.endswith(".dist-info"))


def _below(folder: str, without: tuple[str, ...] = ()) -> Iterator[tuple[str, int, int]]:
    """Path, size and time of every file below a folder; a link to elsewhere is not followed."""
    waiting = [folder] if Path(folder).is_dir() else []
    while waiting:
        with os.scandir(waiting.pop()) as entries:
            for entry in entries:
                if entry.name in _NOT_READ or entry.path in without:
                    continue
                if entry.is_symlink():
                    raise _UnknownError
                if entry.is_dir():
                    waiting.append(entry.path)
                else:
                    found = entry.stat()
                    yield entry.path, found.st_size, _time(found)
