"""What is installed beside the program, read off the names of folders: asking each package takes longer."""

import sys
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

_NOTES = (".dist-info", ".egg-info")


def installed_packages() -> Iterator[str]:
    """Name and version of every package, folder by folder as Python looks for them."""
    for folder in filter(None, sys.path):
        with suppress(OSError):
            yield from sorted(path.name for path in Path(folder).iterdir() if path.name.endswith(_NOTES))
