"""The files of a lab's folder: which there are, what each is, and their bytes."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from generator.problems import Level, Location, NewelError, Problem

_ID = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_SIDE = re.compile(r"(?P<base>[a-z0-9-]+)\.(?P<tail>[A-Za-z0-9-]+)")
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
    for name, data in files.items():
        stem = Path(name).stem
        side = _SIDE.fullmatch(stem)
        if name in lab or Path(name).suffix not in (".yml", ".yaml"):
            continue
        if side:
            sides[side["base"], side["tail"]] = (name, data)
        elif _ID.fullmatch(stem):
            procedures[stem] = (name, data)
        else:
            problems.append(_bad_name(name, stem))
    posted = dict(_posted(path, shown, problems))
    kept = frozenset(f"posted/pictures/{name}" for name in _pictures(path / "posted"))
    return Folder(
        path, shown, lab, procedures, sides, _pictures(path), _formulas(path, shown), tuple(problems), posted,
        kept,
    )  # fmt: skip


def _files(path: Path, shown: str, problems: list[Problem]) -> Iterator[tuple[str, bytes]]:
    return _bytes(
        [*sorted(path.glob("*.y*ml")), *sorted((path / "lab").glob("*.y*ml"))], path, shown, problems
    )


def _posted(path: Path, shown: str, problems: list[Problem]) -> Iterator[tuple[str, bytes]]:
    home = path / "posted"
    return _bytes([*sorted(home.glob("*.yml")), *sorted(home.glob("*/*.yml"))], path, shown, problems)


def _bytes(found: list[Path], path: Path, shown: str, problems: list[Problem]) -> Iterator[tuple[str, bytes]]:
    inside = path.resolve()
    for file in found:
        name = f"{shown}/{file.relative_to(path).as_posix()}"
        if not _is_inside(file, inside):
            problems.append(
                Problem(
                    "unreadable",
                    Level.ERROR,
                    Location(name),
                    "the file is a link that leads out of the folder",
                    "copy the file itself here",
                )
            )
            continue
        try:
            yield name, file.read_bytes()
        except OSError as bad:
            problems.append(
                Problem(
                    "unreadable",
                    Level.ERROR,
                    Location(name),
                    f"the file cannot be opened ({bad.strerror})",
                    "look at its rights and its disk",
                )
            )


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
    wish = re.sub(r"[^a-z0-9]+", "-", stem.lower()).strip("-") or "my-procedure"
    return Problem(
        "unreadable",
        Level.ERROR,
        Location(name),
        f'a procedure\'s file name is its id, and "{stem}" is none: lower-case words with hyphens',
        f"rename the file to `{wish}.yml`",
    )


def _pictures(path: Path) -> frozenset[str]:
    folder = path / "pictures"
    inside = folder.resolve()
    files = (
        file
        for file in folder.rglob("*")
        if file.is_file() and not file.name.endswith(".part") and _is_inside(file, inside)
    )
    return frozenset(file.relative_to(folder).as_posix() for file in files)


def _formulas(path: Path, shown: str) -> tuple[str, str] | None:
    file = path / "formulas.py"
    if not file.is_file() or not _is_inside(file, path.resolve()):
        return None
    return f"{shown}/formulas.py", file.read_bytes().decode("utf-8", "replace")
