"""One build at a time for one folder; the lock ends with the process that holds it."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO

from generator.problems import NewelError


@contextmanager
def hold_lock(path: Path, target: Path) -> Iterator[None]:
    """Hold the lock file while the block runs; raises NewelError "already-building" when it is held."""
    with path.open("a+b") as file:
        if not _take(file):
            raise NewelError(
                "already-building",
                f"another build is writing {target}",
                "two builds at once would mix their pages",
                "wait until it has ended, then run this again",
            )
        yield


if sys.platform == "win32":
    import msvcrt

    def _take(file: IO[bytes]) -> bool:
        file.seek(0)
        try:
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True

else:
    import fcntl

    def _take(file: IO[bytes]) -> bool:
        try:
            fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            return False
        return True
