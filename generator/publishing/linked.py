"""The files of one folder under the same names in another, without a copy where the system can do that."""

import os
import shutil
from collections.abc import Callable
from pathlib import Path


def link_files(source: Path, target: Path, left_out: Callable[[str], bool]) -> None:
    """Give every file below `source` a second name below `target`, but those whose path is left out.

    A file system that has no second names gets copies. Raises OSError.
    """
    waiting = [""]
    while waiting:
        below = waiting.pop()
        with os.scandir(source / below) as found:
            entries = [(f"{below}{entry.name}", entry.is_dir(follow_symlinks=False)) for entry in found]
        waiting += [f"{path}/" for path, folder in entries if folder]
        files = [path for path, folder in entries if not folder and not left_out(path)]
        if files:
            (target / below).mkdir(parents=True, exist_ok=True)
        for path in files:
            _link(f"{source}/{path}", f"{target}/{path}")


def _link(source: str, target: str) -> None:
    try:
        os.link(source, target)
    except OSError:
        shutil.copyfile(source, target)
