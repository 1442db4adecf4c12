"""A folder that holds the files of another, each under a second name of the same bytes (a hard link)."""

import os
import shutil
from collections.abc import Callable, Mapping
from pathlib import Path


def link_files(source: Path, target: Path, left_out: Callable[[str], bool]) -> frozenset[str]:
    """Bring `target`, which need not be there, in line with `source`: the same files and no others.


    What is the same file in both stays (the system numbers its files, so nothing is read), all else there is
    removed. Of a file whose path is left out there is none in `target`. A file system that has no second
    names gets copies. Returns every path at which another file, or none, lies now, or one with a name more.
    Raises OSError.
    """
    waiting, touched = [""], set[str]()
    while waiting:
        below = waiting.pop()
        wanted, folders = _entries(f"{source}/{below}")
        there, others = _entries(f"{target}/{below}")
        waiting += [f"{below}{name}/" for name in folders]
        for name in others.keys() - folders.keys():
            remove_folder(f"{target}/{below}{name}")
        keep = {name: file for name, file in wanted.items() if not left_out(below + name)}
        touched.update(below + name for name in wanted.keys() - keep.keys())
        if keep and not there:
            (target / below).mkdir(parents=True, exist_ok=True)
        for name in there.keys() | keep.keys():
            if there.get(name) != keep.get(name):
                _replace(f"{source}/{below}{name}", f"{target}/{below}{name}", name in there, name in keep)
                touched.add(below + name)
        if there and not keep and not folders:
            (target / below).rmdir()
    return frozenset(touched)


def _entries(folder: str) -> tuple[Mapping[str, int], Mapping[str, int]]:
    """Files and folders in a folder with the numbers that the system has given them."""
    files: dict[str, int] = {}
    folders: dict[str, int] = {}
    try:
        with os.scandir(folder) as found:
            for entry in found:
                kind = folders if entry.is_dir(follow_symlinks=False) else files
                kind[entry.name] = entry.inode()
    except FileNotFoundError:
        pass
    return files, folders


def _replace(source: str, target: str, there: bool, wanted: bool) -> None:
    if there:
        os.unlink(target)  # noqa: PTH108 - a path for each of thousands takes longer than the call
    if not wanted:
        return
    try:
        os.link(source, target)
    except OSError:
        shutil.copyfile(source, target)


def remove_folder(folder: str) -> None:
    """Remove a folder and all that is in it; of a link to elsewhere the link alone. Raises OSError."""
    with os.scandir(folder) as found:
        entries = [(entry.path, entry.is_dir(follow_symlinks=False)) for entry in found]
    for path, is_folder in entries:
        if is_folder:
            remove_folder(path)
        else:
            os.unlink(path)  # noqa: PTH108
    os.rmdir(folder)  # noqa: PTH106
