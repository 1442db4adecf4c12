"""The style sheet and the scripts of the pages, each joined from small files."""

import re
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from generator.outputs.drawings import drawings
from generator.outputs.site import SiteFile

STYLES = ("tokens", "type", "shell", "parts", "steps", "tables", "hazards", "strip", "tools", "print")
# What every page loads, and what a kind of page loads besides; a module stands behind what it imports.
BASE = ("pace", "store", "dom", "notices", "filter", "age", "offline", "start")
_SUMS = ("calculate", "sums", "typed", "boxes")
KINDS: Mapping[str, tuple[str, ...]] = {
    "procedure": (
        "clock", "run", "sound", "ticks", "record", "timers", "plan", *_SUMS, "job", "bench", "learn",
        "procedure",
    ),
    "calculator": (*_SUMS, "effects", "chart", "carry", "calculator"),
    "cards": ("codes", "current"),
}  # fmt: skip
_HERE = Path(__file__).parent
_IMPORT = re.compile(r"^import .*$\n?", re.MULTILINE)
_IMPORTED = re.compile(r'^import \{ (.+) \} from "\./([\w-]+)\.js";$', re.MULTILINE)
_EXPORT = re.compile(r"^export ", re.MULTILINE)
_BLANK = re.compile(r"^\n", re.MULTILINE)
_INDENT = re.compile(r"^ +", re.MULTILINE)
_COMMENT = re.compile(r"^[ ]*(/\*\*(?:[^*]|\*(?!/))*\*/|// .*)\n", re.MULTILINE)
# The type of a name, for the checker of an editor, within a line of code.
_TYPE = re.compile(r"/\*\* @type (?:[^*]|\*(?!/))*\*/ ?")


@cache
def page_assets() -> tuple[SiteFile, ...]:
    """Return the files that pages load, from the root of the site."""
    return (
        SiteFile("assets/newel.css", _join_styles().encode()),
        SiteFile(script_path(), base_script().encode()),
        *(SiteFile(script_path(kind), kind_script(kind).encode()) for kind in KINDS),
        SiteFile("assets/newel-frame-worker.js", _joined(("frame-worker", "parts-worker")).encode()),
        SiteFile("assets/newel-search-parts.js", _joined(("search-parts",)).encode()),
        *(SiteFile(path, svg.encode()) for path, svg in drawings()),
    )


def _join_styles() -> str:
    return "\n".join(_read(f"styles/{name}.css") for name in STYLES)


def script_path(kind: str = "") -> str:
    """Return where the script of every page stands, or the one that a kind of page loads besides."""
    return f"assets/newel-{kind}.js" if kind else "assets/newel.js"


def base_script() -> str:
    """Return the script of every page, which hands the others the names that they take from its modules."""
    shared = sorted({name for kind in KINDS.values() for name in _taken(kind)})
    body = f"{_joined(BASE)}\nglobalThis.newelShared = {{ {', '.join(shared)} }};"
    return f'(function () {{\n"use strict";\n{body}\n}})();\n'


def kind_script(kind: str) -> str:
    """Return the script of a kind of page; it runs once the page is read, behind the script of every page.

    It waits for that itself: engines put the script of every page where they like.
    """
    modules = KINDS[kind]
    body = f"const {{ {', '.join(_taken(modules))} }} = newelShared;\n{_joined(modules)}"
    return f'document.addEventListener("DOMContentLoaded", function () {{\n"use strict";\n{body}\n}});\n'


def _taken(modules: tuple[str, ...]) -> list[str]:
    """The names that modules import from those of every page."""
    found = (pair for name in modules for pair in _IMPORTED.findall(_read(f"scripts/{name}.js")))
    return sorted({name for names, module in found if module in BASE for name in names.split(", ")})


def _joined(names: tuple[str, ...]) -> str:
    """Modules one after the other; pages in a folder cannot load modules.

    `import` and `export` are for the type checker of an editor only, so a name exported once is unique over
    all modules (a test). Comments, indentation and empty lines stay behind: the reader of a page would wait
    for them.
    """
    body = "\n".join(_EXPORT.sub("", _IMPORT.sub("", _read(f"scripts/{name}.js"))) for name in names)
    return _BLANK.sub("", _INDENT.sub("", _TYPE.sub("", _COMMENT.sub("", body))))


def _read(path: str) -> str:
    return (_HERE / path).read_text(encoding="utf-8")
