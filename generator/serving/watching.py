"""Say which files of the lab's folder have changed."""

import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from watchdog.events import (
    DirCreatedEvent,
    DirDeletedEvent,
    DirMovedEvent,
    FileClosedEvent,
    FileCreatedEvent,
    FileDeletedEvent,
    FileModifiedEvent,
    FileMovedEvent,
    FileSystemEvent,
    FileSystemEventHandler,
)
from watchdog.observers import Observer

from generator.serving.changes import Changes

# Asked of the system alone: our own reading of a thousand files would be two thousand events more.
_ASKED: list[type[FileSystemEvent]] = [
    DirCreatedEvent, DirDeletedEvent, DirMovedEvent, FileClosedEvent, FileCreatedEvent, FileDeletedEvent,
    FileMovedEvent,
    # Linux tells when a file that was written is closed; until then it is half written.
    *([] if sys.platform == "linux" else [FileModifiedEvent]),
]  # fmt: skip
_QUIET = 0.01  # an editor saves in several strokes; this much silence ends them


class _Listener(FileSystemEventHandler):
    """Notes what changes; a file that was closed after writing ends its burst at once."""

    def __init__(self, changes: Changes) -> None:
        self._changes = changes

    def on_any_event(self, event: FileSystemEvent) -> None:
        """Note the event, unless it is of hidden files or editors' own."""
        kinds, now = type(event), time.monotonic()
        paths = [Path(str(path)) for path in (event.src_path, event.dest_path) if path]
        wanted = frozenset(path for path in paths if not _is_passing(path))
        if not wanted or kinds not in _ASKED:
            return
        ended = kinds is FileClosedEvent or (kinds is FileMovedEvent and not _is_passing(paths[-1]))
        self._changes.add(wanted, now if ended and _has_text(paths[-1]) else now + _QUIET)


def _is_passing(path: Path) -> bool:
    hidden = path.name.startswith(".") or path.parent.name == ".newel"
    return hidden or path.name.endswith(("~", ".swp", ".tmp"))


def _has_text(path: Path) -> bool:
    """Whether a file is there and not empty; an editor may empty a file before it writes."""
    try:
        return path.stat().st_size > 0
    except OSError:
        return False


@contextmanager
def watch_folder(folder: Path, changes: Changes) -> Iterator[None]:
    """Add to the changes whatever changes below a folder, while the block runs."""
    observer = Observer()
    observer.schedule(_Listener(changes), str(folder), recursive=True, event_filter=_ASKED)
    observer.start()
    try:
        yield
    finally:
        observer.stop()
        observer.join()
