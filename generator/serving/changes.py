"""Files that have changed and were not looked at yet, handed from one thread to another."""

import threading
import time
from pathlib import Path


class Changes:
    """Files with the moment at which their burst of changes is over; whoever takes them waits for it."""

    def __init__(self) -> None:
        self._files: set[Path] = set()
        self._due = 0.0
        self._ended = False
        self._changed = threading.Condition()

    def add(self, files: frozenset[Path], due: float) -> None:
        """Note files; they are looked at when `due` (of time.monotonic) has come and no more were added."""
        with self._changed:
            self._files |= files
            self._due = due
            self._changed.notify()

    def end(self) -> None:
        """Let the one who waits go."""
        with self._changed:
            self._ended = True
            self._changed.notify()

    @property
    def waiting(self) -> bool:
        """Whether there is something to look at, or to end."""
        return bool(self._files) or self._ended

    def take(self, patience: float | None) -> frozenset[Path] | None:
        """The files of a burst that is over; no files after `patience` seconds, None at the end."""
        with self._changed:
            self._changed.wait_for(lambda: self.waiting, patience)
            while self._files and not self._ended and (left := self._due - time.monotonic()) > 0:
                self._changed.wait(left)
            files, self._files = frozenset(self._files), set()
            return None if self._ended else files
