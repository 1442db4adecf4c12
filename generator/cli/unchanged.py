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

from generator.publishing.installed import installed_packages
from generator.publishing.seal import LinkFoundError, files_below, seal_of, time_of

# path -> size, time of the last change in ns, SHA-256 ("" where it is not looked at)
Files = dict[str, tuple[int, int, str]]
# A mkdocs.yml that says one of these may read files that are not known here.
_FARTHER = re.compile(
    r"hooks:|custom_dir|INHERIT|!ENV|extra_|"
    r"^[ \t]+- (?!search\b|newel\b|admonition\b|attr_list\b|tables\b|toc\b)",
    re.MULTILINE,
)
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
    except (OSError, LinkFoundError, _UnknownError):
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
        for path, size, time in files_below(str(folder), (str(target),)):
            yield path, (size, time, "")


def is_unchanged(note: Path, target: Path, before: Before) -> dict[str, Any] | None:
    """What was noted when the site was written, where a build would write the same; else None.

    A file with another time is compared by its content.
    """
    try:
        noted = json.loads(note.read_bytes())
        same = noted["asked"] == _as_json(before.asked) and before.files is not None
        same = same and noted["files"].keys() == (before.files or {}).keys()
        same = same and all(_holds(path, row, before) for path, row in noted["files"].items())
        if same and noted["site"] == seal_of(target):
            told: dict[str, Any] = noted["told"]
            return told
    except (OSError, ValueError, KeyError, TypeError, LinkFoundError):
        return None
    return None


def note_site(note: Path, seal: str, before: Before, told: Mapping[str, object]) -> None:
    """Note what the site was written from; a fault costs time at the next build and nothing else."""
    if before.files is None or not seal:
        return
    with suppress(OSError):
        known = _noted_files(note)
        files = {path: _with_digest(path, row, known.get(path)) for path, row in before.files.items()}
        noted = {"asked": before.asked, "files": files, "site": seal, "told": told}
        fresh = note.with_suffix(".part")
        fresh.write_text(json.dumps(noted), encoding="utf-8")
        fresh.replace(note)


def _noted_files(note: Path) -> Mapping[str, list[Any]]:
    """The files of the note before, as they were then."""
    try:
        files: Mapping[str, list[Any]] = json.loads(note.read_bytes())["files"]
        return files if isinstance(files, dict) else {}
    except (OSError, ValueError, KeyError, TypeError):
        return {}


def _with_digest(path: str, row: tuple[int, int, str], noted: list[Any] | None) -> tuple[int, int, str]:
    """A file's row with its digest: that of the note before where it has the same size and time."""
    if noted and noted[:2] == [*row[:2]] and noted[2]:
        return (*row[:2], str(noted[2]))
    return (*row[:2], _digest(path))


def beside_lab(before: Before, lab: Path) -> str:
    """A digest of all that a build reads besides the lab's own files; "" where that is not known."""
    if before.files is None:
        return ""
    within = f"{lab}{os.sep}"
    apart = [path for path in before.files if not path.startswith(within) or path.endswith("mkdocs.yml")]
    with suppress(OSError):
        rows = [(path, _digest(path)) for path in apart]
        return hashlib.sha256(repr((before.asked, rows)).encode("utf-8", "surrogatepass")).hexdigest()
    return ""


def _holds(path: str, row: list[Any], before: Before) -> bool:
    size, time, _ = (before.files or {})[path]
    return bool(size == row[0] and (time == row[1] or _digest(path) == row[2]))


def _as_json(value: object) -> Any:
    return json.loads(json.dumps(value))


def _stat(path: Path) -> tuple[int, int, str]:
    found = path.stat()
    return found.st_size, time_of(found), ""


def _digest(path: str) -> str:
    return hashlib.sha256(Path(path).read_bytes()).hexdigest()


def _program() -> Iterator[object]:
    """The program itself: every file of ours by size and time, the names and versions of all packages."""
    rows = files_below(str(Path(__file__).parent.parent))
    ours = sorted(row for row in rows if not row[0].endswith(".pyc"))
    yield hashlib.sha256(repr(ours).encode()).hexdigest()
    yield hashlib.sha256("\n".join(installed_packages()).encode()).hexdigest()
    yield sys.version
    yield os.environ.get("SOURCE_DATE_EPOCH", "")
