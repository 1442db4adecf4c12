"""One digest of the path, size and time of every file in a folder: whether it lies there as it was left."""

import hashlib
import os
from collections.abc import Iterable, Iterator, Mapping
from contextlib import suppress
from pathlib import Path

_NOT_READ = (".newel", ".git")


class LinkFoundError(Exception):
    """What a symbolic link leads to cannot be told from the folder that it lies in."""


# Size and time by path from the folder.
Rows = Mapping[str, tuple[int, int]]


def seal_of(folder: Path) -> str:
    """The digest; raises LinkFoundError and OSError."""
    return seal_of_rows(rows_of(folder))


def rows_of(folder: Path) -> Rows:
    """What a seal is made from; raises LinkFoundError and OSError."""
    beginning = len(str(folder)) + 1
    found = files_below(str(folder))
    return {path[beginning:].replace(os.sep, "/"): (size, time) for path, size, time in found}


def rows_after(rows: Rows, folder: Path, touched: Iterable[str]) -> Rows:
    """The rows once some paths of the folder were written or removed, and no others. Raises OSError."""
    after = dict(rows)
    for path in touched:
        after.pop(path, None)
        with suppress(FileNotFoundError):
            found = os.lstat(f"{folder}/{path}")
            after[path] = (found.st_size, time_of(found))
    return after


def seal_of_rows(rows: Rows) -> str:
    """The digest of rows, in whatever order they were found."""
    return hashlib.sha256(repr(sorted(rows.items())).encode("utf-8", "surrogatepass")).hexdigest()


def files_below(folder: str, without: tuple[str, ...] = ()) -> Iterator[tuple[str, int, int]]:
    """Path, size and time of every file below a folder; a link to elsewhere raises LinkFoundError."""
    waiting = [folder] if Path(folder).is_dir() else []
    while waiting:
        with os.scandir(waiting.pop()) as entries:
            for entry in entries:
                if entry.name in _NOT_READ or entry.path in without:
                    continue
                if entry.is_symlink():
                    raise LinkFoundError
                if entry.is_dir():
                    waiting.append(entry.path)
                else:
                    found = entry.stat()
                    yield entry.path, found.st_size, time_of(found)


def time_of(found: os.stat_result) -> int:
    """When a file was changed: by what it says, which anybody can set, and by what the system says."""
    return found.st_mtime_ns + found.st_ctime_ns
