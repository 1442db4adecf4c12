"""The address under which the lab publishes its site, as the engine's own file says it."""

import re
from pathlib import Path

_LINE = re.compile(r"^site_url:[ \t]*[\"']?(https?://[^\s\"'#]+)", re.MULTILINE)


def site_address(folder: Path) -> str:
    """`site_url` of the mkdocs.yml beside or above a lab's folder, with a slash; empty without one."""
    for file in (folder / "mkdocs.yml", folder.resolve().parent / "mkdocs.yml"):
        if file.is_file():
            found = _LINE.search(file.read_text(encoding="utf-8", errors="replace"))
            return found.group(1).rstrip("/") + "/" if found else ""
    return ""
