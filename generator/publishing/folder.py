"""A folder takes another one's place at once, or by two renames that can be undone."""

import ctypes
import os
import shutil
import sys
from pathlib import Path

from generator.problems import NewelError

_AT_FDCWD = {"linux": -100, "darwin": -2}
_EXCHANGE = 2  # RENAME_EXCHANGE of renameat2(2), and RENAME_SWAP of renameatx_np(2)
_MARK = Path("assets") / "newel.css"


def replace_folder(fresh: Path, target: Path, state: Path) -> None:
    """Put `fresh` in the place of `target` (both on one file system); the old one is removed after that."""
    if not target.exists():
        fresh.rename(target)
        return
    if exchange(fresh, target):
        return  # the old site now lies where the fresh one was, in a folder that goes away
    aside = _aside(target, state)
    _clear(aside)
    target.rename(aside)
    try:
        fresh.rename(target)
    except OSError:
        aside.rename(target)
        raise
    _clear(aside)


def recover_folder(target: Path, state: Path) -> None:
    """Put the last site back when a build was cut off between its two renames."""
    aside = _aside(target, state)
    if aside.exists() and not target.exists():
        aside.rename(target)


def refuse_strange_folder(target: Path) -> None:
    """Raise NewelError when the folder holds anything but a site of ours; it would be removed."""
    if not target.exists() or (target.is_dir() and not any(target.iterdir())) or (target / _MARK).exists():
        return
    raise NewelError(
        "strange-folder",
        f"{target} is there already and is no site that Newel wrote",
        "its contents would be replaced",
        "name another folder, or empty this one yourself",
    )


def exchange(one: Path, other: Path) -> bool:
    """Swap two folders in one call of the system; False where it has none."""
    if sys.platform not in _AT_FDCWD:
        return False
    name = "renameat2" if sys.platform == "linux" else "renameatx_np"
    call = getattr(ctypes.CDLL(None, use_errno=True), name, None)
    if call is None:
        return False
    here = _AT_FDCWD[sys.platform]
    done: int = call(here, os.fsencode(one), here, os.fsencode(other), _EXCHANGE)
    return done == 0


def _aside(target: Path, state: Path) -> Path:
    return state / f"{target.name}-before"


def _clear(folder: Path) -> None:
    if folder.exists():
        shutil.rmtree(folder)
