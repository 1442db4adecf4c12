"""The files of a lab's folder: which there are, what each is, and their bytes."""

import re
import stat
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from generator.notation.decode import MOST_BYTES
from generator.problems import Level, Location, NewelError, Problem
from generator.reading.file_names import acting_drawing, is_device, picture_names, twice

_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_SIDE = re.compile(r"(?P<base>[a-z0-9-]+)\.(?P<tail>[A-Za-z0-9-]+)")
_ENDINGS = (".yml", ".yaml")
# As an editor for plain text saves what it is told to call `x.yml`.
_GOES_ON = (".yml.txt", ".yaml.txt")
_LONGEST = 60
_COPY = "copy the file itself here"
OWN_FOLDERS = ("lab", "posted", "pictures")


@dataclass(frozen=True, slots=True)
class Folder:
    """Bytes by file as shown: lab files, procedures by id, side files by (id, tail), posted files.

    `pictures` are named from the folder of pictures, `kept_pictures` of issues from the lab's folder.
    """

    path: Path
    shown: str
    lab: dict[str, bytes]
    procedures: dict[str, tuple[str, bytes]]
    sides: dict[tuple[str, str], tuple[str, bytes]]
    pictures: frozenset[str]
    formulas: tuple[str, str] | None
    problems: tuple[Problem, ...]
    posted: dict[str, bytes] = field(default_factory=dict)
    kept_pictures: frozenset[str] = frozenset()


def find_folder(given: Path) -> Path:
    """The folder that holds the lab: the one given, or `procedures` inside it."""
    for folder in (given, given / "procedures"):
        if (folder / "lab.yml").is_file() or (folder / "lab").is_dir():
            return folder
    if not given.is_dir():
        raise NewelError(
            "no-folder", f"there is no folder {given}", hint="name the folder that holds lab.yml"
        )
    raise NewelError(
        "no-lab",
        f"{given} holds neither lab.yml nor a folder lab/",
        "a lab is described once, beside its procedures",
        "run `newel init`, or name another folder",
    )


def open_folder(path: Path, shown: str = "") -> Folder:
    """All author's files below a lab's folder; links that lead out of it are refused."""
    shown = shown or path.as_posix()
    problems: list[Problem] = []
    files = dict(_files(path, shown, problems))
    lab = {name: data for name, data in files.items() if _is_lab(name, shown)}
    procedures: dict[str, tuple[str, bytes]] = {}
    sides: dict[tuple[str, str], tuple[str, bytes]] = {}
    taken: dict[str, str] = {}
    for name, data in files.items():
        if name in lab:
            continue
        stem, _, ending = name.rpartition("/")[2].rpartition(".")
        side, folded = _SIDE.fullmatch(stem), name.casefold().rpartition(".")[0]
        if f".{ending}" not in _ENDINGS:
            problems.append(_bad_ending(name))
        elif is_device(stem) or not (side or _ID.fullmatch(stem)) or len(stem) > _LONGEST:
            problems.append(_bad_name(name, stem))
        elif folded in taken:
            problems.append(twice(name, taken[folded]))
        else:
            taken[folded] = name
            if side:
                sides[side["base"], side["tail"]] = (name, data)
            else:
                procedures[stem] = (name, data)
    posted = dict(_posted(path, shown, problems))
    pictures = _pictures(path, shown, problems)
    kept = frozenset(f"posted/pictures/{name}" for name in _pictures(path / "posted", f"{shown}/posted", []))
    return Folder(
        path, shown, lab, procedures, sides, pictures, _formulas(path, shown), tuple(problems), posted, kept,
    )  # fmt: skip


def _files(path: Path, shown: str, problems: list[Problem]) -> Iterator[tuple[str, bytes]]:
    found = (*sorted(path.glob("*.*")), *sorted((path / "lab").glob("*.*")))
    hidden = [file for file in found if file.name.lower().endswith(_GOES_ON)]
    problems += (_goes_on(f"{shown}/{file.relative_to(path).as_posix()}") for file in hidden)
    return _bytes([file for file in found if file.suffix.lower() in _ENDINGS], path, shown, problems)


def _posted(path: Path, shown: str, problems: list[Problem]) -> Iterator[tuple[str, bytes]]:
    home = path / "posted"
    return _bytes([*sorted(home.glob("*.yml")), *sorted(home.glob("*/*.yml"))], path, shown, problems)


def _bytes(found: list[Path], path: Path, shown: str, problems: list[Problem]) -> Iterator[tuple[str, bytes]]:
    inside = path.resolve()
    for file in found:
        apart, mode = file.parent != path, mode_of(file)
        name = f"{shown}/{file.relative_to(path).as_posix() if apart else file.name}"
        # A thousand files that are no links need not be followed.
        if (apart or stat.S_ISLNK(mode)) and not _is_inside(file, inside):
            problems.append(_unread(name, "the file is a link that leads out of the folder", _COPY))
        elif not stat.S_ISREG(mode) and file.exists() and not file.is_file():
            problems.append(_unread(name, "this is no file", "rename it, or take it out of this folder"))
        else:
            try:
                with file.open("rb") as opened:
                    data = opened.read(MOST_BYTES + 1)  # what is larger is refused, however large it is
            except OSError as bad:
                said = f"the file cannot be opened ({bad.strerror})"
                problems.append(_unread(name, said, "look at its rights and its disk"))
            else:
                yield name, data


def mode_of(file: Path) -> int:
    """What kind of thing a name stands for, a link as a link; 0 where it is gone."""
    try:
        return file.lstat().st_mode
    except OSError:
        return 0


def _unread(name: str, message: str, fix: str) -> Problem:
    return Problem("unreadable", Level.ERROR, Location(name), message, fix)


def _is_inside(file: Path, folder: Path) -> bool:
    """Whether a file, its links followed, lies in a folder; links in a circle lie nowhere."""
    try:
        return file.resolve().is_relative_to(folder)
    except (OSError, RuntimeError):
        return False


def _is_lab(name: str, shown: str) -> bool:
    inner = name[len(shown) + 1 :]
    return inner.startswith("lab/") or inner in ("lab.yml", "lab.yaml")


def _bad_name(name: str, stem: str) -> Problem:
    wish = re.sub(r"[^a-z0-9]+", "-", stem.lower()).strip("-")[:_LONGEST] or "my-procedure"
    if is_device(stem):
        said = f'"{stem}" is the name of a device on some computers, which cannot hold such a file'
        return _unread(name, said, f"rename the file to `{wish}-1.yml`")
    said = f'a procedure\'s file name is its id, and "{stem}" is none: lower-case words with hyphens'
    if _ID.fullmatch(stem):
        said = f"the file's name has {len(stem)} letters, and an id has {_LONGEST} at most"
    return _unread(name, said, f"rename the file to `{wish}.yml`")


def _bad_ending(name: str) -> Problem:
    said = "the ending of the file's name is written in capital letters, and some computers would not see it"
    return _unread(name, said, f"rename the file to `{Path(name).stem.lower()}.yml`")


def _goes_on(name: str) -> Problem:
    said = "the file is not read: its name goes on with `.txt`, which some computers hide"
    return _unread(name, said, f"rename it to `{Path(name).stem}`")


def _pictures(path: Path, shown: str, problems: list[Problem]) -> frozenset[str]:
    """Pictures by their path in `pictures`; links out of it, and drawings that act, are problems."""
    folder, lab = path / "pictures", path.resolve()
    names: set[str] = set()
    for file in sorted(folder.rglob("*")):
        name = file.relative_to(folder).as_posix()
        if file.name.endswith(".part") or not (file.is_file() or file.is_symlink()):
            continue
        if not _is_inside(file, lab):
            where = f"{shown}/pictures/{name}"
            problems.append(_unread(where, "the picture is a link that leads out of the folder", _COPY))
            continue
        names.add(name)
        if file.suffix.lower() == ".svg" and file.is_file():
            problems += acting_drawing(name, file.read_bytes(), shown)
    problems += picture_names(names, shown)
    return frozenset(name for name in names if (folder / name).is_file())


def _formulas(path: Path, shown: str) -> tuple[str, str] | None:
    file = path / "formulas.py"
    if not file.is_file() or not _is_inside(file, path.resolve()):
        return None
    return f"{shown}/formulas.py", file.read_bytes().decode("utf-8", "replace")
