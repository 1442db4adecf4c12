"""Say so when a file of the lab's folder changes."""

import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from watchdog.events import FileSystemEvent, FileSystemEventHandler
from watchdog.observers import Observer

_CHANGES = frozenset(("created", "modified", "moved", "deleted"))
_QUIET = 0.01  # an editor saves in several strokes; this much silence ends them


class _Listener(FileSystemEventHandler):
    """Calls once a burst of changes has ended."""

    def __init__(self, changed: Callable[[], None]) -> None:
        self._changed = changed
        self._timer: threading.Timer | None = None

    def on_any_event(self, event: FileSystemEvent) -> None:
        """Wait for the end of the burst; hidden files and editors' own are no change."""
        name = Path(str(event.src_path)).name
        if event.event_type not in _CHANGES or name.startswith(".") or name.endswith(("~", ".swp", ".tmp")):
            return
        if self._timer is not None:
            self._timer.cancel()
        self._timer = threading.Timer(_QUIET, self._changed)
        self._timer.daemon = True
        self._timer.start()


@contextmanager
def watch_folder(folder: Path, changed: Callable[[], None]) -> Iterator[None]:
    """Call `changed` after each burst of changes below a folder, while the block runs."""
    observer = Observer()
    observer.schedule(_Listener(changed), str(folder), recursive=True)
    observer.start()
    try:
        yield
    finally:
        observer.stop()
        observer.join()
