"""The store of what a build made: bytes by key in one sqlite file beside the site, never trusted blind."""

import hashlib
import os
import sqlite3
import sys
import threading
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager, suppress
from functools import cache
from pathlib import Path
from typing import TypeVar

from generator.publishing.installed import installed_packages

_Answer = TypeVar("_Answer")
_NAME = ".press.sqlite"
_MOST_ROWS = 50_000
# As many are written at once: a row by itself costs as much again as what it says.
_AT_ONCE = 100
_TABLE = """CREATE TABLE IF NOT EXISTS printed (
    number INTEGER PRIMARY KEY AUTOINCREMENT, key TEXT UNIQUE, digest BLOB NOT NULL, content BLOB NOT NULL)"""
_LOOK_UP = "SELECT digest, content FROM printed WHERE key = ?"
_PUT_IN = "INSERT OR REPLACE INTO printed (key, digest, content) VALUES (?, ?, ?)"
_OLDEST_AWAY = "DELETE FROM printed WHERE number <= (SELECT max(number) FROM printed) - ?"


@contextmanager
def open_store(state: Path) -> "Iterator[PressStore]":
    """The store in a folder `.newel`; a fault of it costs time and never a build."""
    store = PressStore(state / _NAME, code_version())
    try:
        yield store
    finally:
        store.close()


class PressStore:
    """Bytes by key and version of the code; a row that is not what was put in is taken for none.

    Rows are written some at a time, and stay in memory where they cannot be. A file that is no store is
    removed and begun anew. The file is made when something is first written.
    """

    def __init__(self, path: Path, version: str) -> None:
        self._path = path
        self._version = version
        self._lock = threading.Lock()
        self._open: sqlite3.Connection | None = None
        self._here: dict[str, bytes] = {}
        self._waiting: list[str] = []
        # The keys of a file that this store has begun: there is no need to look for others in it.
        self._all: set[str] | None = None

    def get(self, key: str) -> bytes | None:
        """The bytes put in under the key by the same code, None where there are none or they are spoilt."""
        with self._lock:
            if key in self._here:
                return self._here[key]
            if self._all is not None and key not in self._all:
                return None
            if self._open is None and not self._path.exists():
                return None
            row = self._try(lambda file: file.execute(_LOOK_UP, (self._key(key),)).fetchone())
        if row is None or not isinstance(row[1], bytes) or row[0] != _digest(row[1]):
            return None
        return row[1]

    def put(self, key: str, content: bytes) -> bool:
        """Keep bytes; on a full disk or while another build writes, for the life of this store only."""
        with self._lock:
            self._here[key] = content
            self._waiting.append(key)
            if len(self._waiting) >= _AT_ONCE:
                self._write()
        return True

    def close(self) -> None:
        """Write what waits, let go of the oldest rows where there are too many, and of the file."""
        with self._lock:
            if self._waiting:
                self._write()
            if self._open is not None:
                self._try(lambda file: file.execute(_OLDEST_AWAY, (_MOST_ROWS,)))
                self._shut()

    def _write(self) -> None:
        """The rows that wait, all or none of them; what is written need not be held any longer."""
        keys, self._waiting = tuple(dict.fromkeys(self._waiting)), []
        rows = [(self._key(key), _digest(self._here[key]), self._here[key]) for key in keys]
        if self._try(lambda file: _put_in(file, rows)):
            if self._all is not None:
                self._all.update(keys)
            for key in keys:
                del self._here[key]

    def _key(self, key: str) -> str:
        return f"{self._version}-{key}"

    def _try(self, work: Callable[[sqlite3.Connection], _Answer]) -> _Answer | None:
        try:
            return work(self._connection())
        except (sqlite3.OperationalError, OSError):
            return None  # locked, full or not writable: the file itself may be sound
        except sqlite3.Error:
            self._shut()
            with suppress(OSError):
                self._path.unlink()
            return None

    def _connection(self) -> sqlite3.Connection:
        if self._open is None:
            self._path.parent.mkdir(parents=True, exist_ok=True)
            self._all = None if self._path.exists() else set()
            # The workers of a build take turns under the lock; each statement or block is whole by itself.
            self._open = sqlite3.connect(
                self._path, timeout=1.0, isolation_level=None, check_same_thread=False
            )
            # Rows carry a digest, so that nothing need be waited for on the disk.
            self._open.execute("PRAGMA synchronous = OFF")
            self._open.execute("PRAGMA journal_mode = MEMORY")
            self._open.execute(_TABLE)
        return self._open

    def _shut(self) -> None:
        if self._open is not None:
            self._open.close()
            self._open = None


def _put_in(file: sqlite3.Connection, rows: Iterable[tuple[str, bytes, bytes]]) -> bool:
    with file:
        file.execute("BEGIN")
        file.executemany(_PUT_IN, rows)
    return True


def _digest(content: bytes) -> bytes:
    return hashlib.sha256(content).digest()


@cache
def code_version() -> str:
    """A digest of everything that a row comes from besides its key; read once a process."""
    digest = hashlib.sha256(sys.version.encode())
    digest.update("\n".join(installed_packages()).encode())
    home = Path(__file__).parent.parent
    for path in sorted(_files(str(home))):
        content = hashlib.sha256(Path(path).read_bytes()).hexdigest()
        digest.update(f"{path[len(str(home)) :]} {content}\n".encode())
    return digest.hexdigest()[:32]


def _files(home: str) -> Iterator[str]:
    for folder, folders, names in os.walk(home):
        folders[:] = [name for name in folders if name != "__pycache__"]
        yield from (f"{folder}/{name}" for name in names)
