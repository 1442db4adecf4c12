"""Names of files that some system cannot hold or cannot tell apart, and drawings that act by themselves."""

import re
from collections.abc import Iterable, Iterator

from generator.model.scalars import DEVICES
from generator.problems import Level, Location, Problem

_FORBIDDEN = re.compile(r'[<>:"|?*\\\x00-\x1f\x7f]')
_ACTS = re.compile(
    rb"<script|<foreignobject|<iframe|\son[a-z]+\s*=|javascript:|<!entity|"
    rb"(?:href|src)\s*=\s*[\"']\s*(?:[a-z]+:)?//|@import|url\(\s*[\"']?(?:[a-z]+:)?//",
    re.IGNORECASE,
)


def is_device(name: str) -> bool:
    """Whether a name, up to its first full stop, is one that Windows keeps for a device."""
    return name.partition(".")[0].rstrip(" ").lower() in DEVICES


def picture_names(names: Iterable[str], shown: str) -> Iterator[Problem]:
    """Pictures whose path cannot be on every system, and those that differ in capital letters alone."""
    first: dict[str, str] = {}
    for name in sorted(names):
        where = Location(f"{shown}/pictures/{name}")
        wrong = next((said for part in name.split("/") if (said := _wrong(part))), "")
        if wrong:
            said = f"the picture's name {wrong}"
            yield _problem(where, said, "rename it: letters, digits and hyphens are safe")
        other = first.setdefault(name.casefold(), name)
        if other != name:
            yield _problem(
                where,
                f'"{name}" and "{other}" differ in capital letters alone; many systems hold one of them only',
                "rename one of the two",
            )


def _wrong(part: str) -> str:
    """What is wrong with one part of a path, or nothing."""
    if is_device(part):
        return f'"{part}" is that of a device on some computers'
    if _FORBIDDEN.search(part):
        return "holds a character that some computers do not allow"
    if part.endswith((".", " ")):
        return "ends in a full stop or a space, which some computers cut off"
    return ""


def twice(name: str, first: str) -> Problem:
    """Two files for one thing."""
    return Problem(
        "id-twice",
        Level.ERROR,
        Location(name),
        f"{first} is there too, and both are taken for the same",
        "keep one of the two files",
    )


def acting_drawing(name: str, content: bytes, shown: str) -> Iterator[Problem]:
    """A drawing with a script, or with something that it fetches from elsewhere."""
    found = _ACTS.search(content)
    if found:
        line = content.count(b"\n", 0, found.start()) + 1
        what = found.group().decode("ascii", "replace").strip()
        yield _problem(
            Location(f"{shown}/pictures/{name}", line),
            f"the drawing holds `{what}`: it would act by itself, or fetch something from elsewhere",
            "save it as a plain drawing; most programs call that a plain or optimised SVG",
        )


def _problem(where: Location, message: str, fix: str) -> Problem:
    return Problem("unreadable", Level.ERROR, where, message, fix)
