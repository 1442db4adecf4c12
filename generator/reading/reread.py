"""A folder already opened, with some procedures' files as they stand now."""

import stat
from collections.abc import Iterable, Mapping
from dataclasses import replace
from pathlib import Path

from generator.notation.decode import MOST_BYTES
from generator.reading.folder import Folder


def reread_folder(folder: Folder, files: Iterable[Path]) -> tuple[Folder, Mapping[str, set[str]]] | None:
    """The same folder with these files read again; their tails by procedure, "" for its own file.

    None where one of them is no file of a procedure that was there before: then more may have changed than
    what stands in it, and the folder must be opened anew.
    """
    procedures, sides = dict(folder.procedures), dict(folder.sides)
    saved: dict[str, set[str]] = {}
    for file in files:
        if file.parent != folder.path:
            return None
        name, data = f"{folder.shown}/{file.name}", _bytes(file)
        base, dot, tail = file.stem.partition(".")
        if data is None:
            return None
        if not dot and procedures.get(base, ("",))[0] == name:
            procedures[base] = (name, data)
        elif dot and base in procedures and sides.get((base, tail), ("",))[0] == name:
            sides[base, tail] = (name, data)
        else:
            return None
        saved.setdefault(base, set()).add(tail)
    return replace(folder, procedures=procedures, sides=sides), saved


def _bytes(file: Path) -> bytes | None:
    """What is in a plain file, up to one byte more than is read; a link may lead elsewhere than before."""
    try:
        found = file.lstat()
        if not stat.S_ISREG(found.st_mode):
            return None
        with file.open("rb") as opened:  # room for the most that is read would take longer than the reading
            return opened.read(min(found.st_size, MOST_BYTES) + 1)
    except OSError:
        return None
