"""The style sheet and the script of every page, each joined from small files."""

import re
from functools import cache
from pathlib import Path

from generator.outputs.drawings import drawings
from generator.outputs.site import SiteFile

STYLES = ("tokens", "type", "shell", "parts", "steps", "tables", "hazards", "strip", "tools", "print")
SCRIPTS = (
    "pace",
    "store",
    "dom",
    "clock",
    "notices",
    "run",
    "sound",
    "ticks",
    "filter",
    "record",
    "timers",
    "plan",
    "calculate",
    "sums",
    "typed",
    "boxes",
    "job",
    "effects",
    "chart",
    "carry",
    "calculator",
    "age",
    "codes",
    "current",
    "bench",
    "learn",
    "offline",
    "start",
)
_HERE = Path(__file__).parent
_IMPORT = re.compile(r"^import .*$\n?", re.MULTILINE)
_EXPORT = re.compile(r"^export ", re.MULTILINE)
_INDENT = re.compile(r"^ +", re.MULTILINE)
_COMMENT = re.compile(r"^[ ]*(/\*\*(?:[^*]|\*(?!/))*\*/|// .*)\n", re.MULTILINE)


@cache
def page_assets() -> tuple[SiteFile, ...]:
    """Return the files that every page loads, from the root of the site."""
    return (
        SiteFile("assets/newel.css", _join_styles().encode()),
        SiteFile("assets/newel.js", _INDENT.sub("", join_scripts(SCRIPTS)).encode()),
        SiteFile("assets/newel-frame-worker.js", _read("scripts/frame-worker.js").encode()),
        *(SiteFile(path, svg.encode()) for path, svg in drawings()),
    )


def _join_styles() -> str:
    return "\n".join(_read(f"styles/{name}.css") for name in STYLES)


def join_scripts(names: tuple[str, ...]) -> str:
    """Return the modules as one classic script; pages in a folder cannot load modules.

    Each module becomes a block of one function, in the order given; `import` and `export` are for the type
    checker of an editor only, so a name exported once is unique over all modules (a test). Comments stay
    behind: the reader of a page would wait for them.
    """
    body = "\n".join(_EXPORT.sub("", _IMPORT.sub("", _read(f"scripts/{name}.js"))) for name in names)
    return f'(function () {{\n"use strict";\n{_COMMENT.sub("", body)}\n}})();\n'


def _read(path: str) -> str:
    return (_HERE / path).read_text(encoding="utf-8")
