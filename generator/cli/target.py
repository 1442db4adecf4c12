"""Which folder, and which procedure of it, the words on the command line mean."""

from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path

from generator.problems import NewelError
from generator.reading import LabRead, find_folder, open_folder, read_lab


@dataclass(frozen=True, slots=True)
class Target:
    """A lab as read, and the id of the one procedure that is asked for, empty for all."""

    read: LabRead
    only: str = ""


def read_target(words: tuple[str, ...], only: str = "") -> Target:
    """Read the lab that is meant by a folder, a procedure's file, a procedure's id, or nothing at all."""
    folder, named = _meant(words)
    if only and named and only != named:
        raise NewelError("two-procedures", f"two procedures are named: {named} and {only}",
                         hint="name one; without a name all are checked")  # fmt: skip
    path = find_folder(folder)
    read = read_lab(open_folder(path, path.as_posix()))
    wanted = (only or named).partition(".")[0]
    if wanted and wanted not in read.folder.procedures:
        raise _no_procedure(wanted, read, named == wanted)
    return Target(read, wanted)


def _meant(words: tuple[str, ...]) -> tuple[Path, str]:
    if len(words) > 2:
        raise NewelError("too-many-words", f"a folder and one procedure are enough: {' '.join(words)}",
                         hint="newel check FOLDER ID")  # fmt: skip
    first = Path(words[0]) if words else Path()
    if not words or first.is_dir():
        return first, words[1] if len(words) > 1 else ""
    if first.is_file() and first.suffix in (".yml", ".yaml") and len(words) == 1:
        parent = first.parent.parent if first.parent.name == "lab" else first.parent
        return parent, "" if first.parent.name == "lab" or first.stem == "lab" else first.stem
    if len(words) == 1 and len(first.parts) == 1:
        return Path(), words[0]
    return first, ""


def _no_procedure(wanted: str, read: LabRead, bare: bool) -> NewelError:
    names = sorted(read.folder.procedures)
    near = get_close_matches(wanted, names, 1)
    what = f'{read.folder.shown} holds no procedure "{wanted}"'
    what += ", and there is no folder of that name" if bare else ""
    hint = f"did you mean {near[0]}?" if near else f"there is: {', '.join(names) or 'none yet'}"
    return NewelError("no-procedure", what, "a procedure's id is the name of its file", hint)
