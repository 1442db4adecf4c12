"""Reads a page of the docs as what it asks the reader to do: save a file, change a line, type a command."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

START = Path(__file__).parents[2] / "site_src" / "start"

_FENCE = re.compile(r"^```(\w*)[^\n]*\n(.*?)^```", re.MULTILINE | re.DOTALL)
_SAVE = re.compile(r"Save this as `([^`]+)`:\s*$")
_CHANGE = re.compile(r"In `([^`]+)`, change\s+`([^`]+)`\s+to\s+`([^`]*)`")


@dataclass(frozen=True)
class Save:
    """A file to write."""

    path: str
    text: str


@dataclass(frozen=True)
class Change:
    """Words of a file to replace by others."""

    path: str
    old: str
    new: str


@dataclass(frozen=True)
class Command:
    """A command to type, and lines that its answer holds in this order."""

    words: str
    answer: tuple[str, ...]


Deed = Save | Change | Command


def pages() -> tuple[Path, ...]:
    """Every page of the docs."""
    return tuple(sorted(START.glob("*.md")))


def deeds_of(page: Path) -> tuple[Deed, ...]:
    """What a page asks its reader to do, in the page's order."""
    return tuple(_deeds(page.read_text(encoding="utf-8")))


def _deeds(text: str) -> Iterator[Deed]:
    end = 0
    for fence in _FENCE.finditer(text):
        prose = text[end : fence.start()]
        yield from _changes(prose)
        end = fence.end()
        saved = _SAVE.search(prose)
        if saved:
            yield Save(saved[1], fence[2])
        elif fence[1] == "console":
            yield from _commands(fence[2])
    yield from _changes(text[end:])


def _changes(prose: str) -> Iterator[Change]:
    for found in _CHANGE.finditer(prose):
        yield Change(*found.groups())


def _commands(block: str) -> Iterator[Command]:
    for piece in re.split(r"^\$ ", block, flags=re.MULTILINE)[1:]:
        first, *rest = piece.splitlines()
        yield Command(first, tuple(line for line in rest if line.strip()))
