"""Small files that must never be half written: a temporary one beside them, flushed, then put in place."""

import os
import tempfile
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path

from generator.problems import NewelError
from generator.publishing.lock import hold_lock


def write_new(path: Path, text: str) -> None:
    """Write a file that must not be there yet; NewelError "posted-meanwhile" when somebody was quicker."""
    with _beside(path, text) as fresh:
        try:
            # A hard link is refused where the name is taken: of two who write it at once, one is told.
            os.link(fresh, path)
        except FileExistsError as taken:
            raise _meanwhile(path) from taken
        except OSError:
            if path.exists():
                raise _meanwhile(path) from None
            Path(fresh).rename(path)
    _flush_folder(path.parent)


def write_over(path: Path, text: str) -> None:
    """Replace a file, or make it."""
    with _beside(path, text) as fresh:
        Path(fresh).replace(path)
    _flush_folder(path.parent)


def keep_file(source: Path, target: Path) -> None:
    """Copy a file to a name that says what it holds; one that is there already is left as it is."""
    if target.exists():
        return
    with _beside(target, source.read_bytes()) as fresh:
        Path(fresh).replace(target)
    _flush_folder(target.parent)


@contextmanager
def one_at_a_time(posted: Path) -> Iterator[None]:
    """Hold the lock of a lab's folder of posted files; NewelError "posting-already" when somebody has it."""
    state = posted.parent / ".newel"
    state.mkdir(parents=True, exist_ok=True)
    with ExitStack() as stack:
        try:
            stack.enter_context(hold_lock(state / "posted.lock", posted))
        except NewelError as held:
            raise NewelError(
                "posting-already",
                f"somebody else is posting into {posted.as_posix()} just now",
                "two who post at once would not see each other's changes",
                "wait until it has ended, then run `newel changes`",
            ) from held
        _sweep(posted)
        yield


def _sweep(folder: Path) -> None:
    """Take away what a posting left behind that was cut off."""
    for left in (*folder.glob(".*.part"), *folder.glob("*/.*.part")):
        left.unlink(missing_ok=True)


@contextmanager
def _beside(path: Path, content: str | bytes) -> Iterator[str]:
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(".part", f".{path.name}.", path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content.encode() if isinstance(content, str) else content)
            file.flush()
            os.fsync(file.fileno())
        Path(name).chmod(0o644)
        yield name
    finally:
        with suppress(FileNotFoundError):
            Path(name).unlink()


def _flush_folder(folder: Path) -> None:
    """Make the new name itself last; systems without such a call do it on their own."""
    if os.name != "posix":
        return
    handle = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _meanwhile(path: Path) -> NewelError:
    return NewelError(
        "posted-meanwhile",
        f"{path.as_posix()} is there already",
        "somebody else has posted the same issue in the meantime",
        "run `newel changes` to see what is posted now, then post again",
    )
