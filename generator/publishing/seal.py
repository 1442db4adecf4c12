"""One digest of the path, size and time of every file in a folder: whether it lies there as it was left."""

import hashlib
import os
from collections.abc import Iterator
from pathlib import Path

_NOT_READ = (".newel", ".git")


class LinkFoundError(Exception):
    """What a symbolic link leads to cannot be told from the folder that it lies in."""


def seal_of(folder: Path) -> str:
    """The digest; raises LinkFoundError and OSError."""
    beginning = len(str(folder))
    rows = sorted((path[beginning:], size, time) for path, size, time in files_below(str(folder)))
    return hashlib.sha256(repr(rows).encode("utf-8", "surrogatepass")).hexdigest()


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
