"""A copy of the site to carry: a folder that opens without a network, and the same folder as one ZIP."""

import datetime
import zipfile
from collections.abc import Iterator
from pathlib import Path

from generator.problems import NewelError

# What only a server or a search engine asks for; the page of errors holds addresses of a server's root.
_FOR_SERVERS = ("404.html", "sitemap.xml", "sitemap.xml.gz")
_MAPS = ".map"
_MARK = "assets/newel.css"
READ_ME = "read-me.txt"
_READ_ME = """\
{name}

Open index.html in a browser. It needs no network and no installation; the search works too.
If this is a ZIP, take everything out of it first.

This copy was made on {day} and does not renew itself. Before you work by it, ask whether there is
a newer one.
To see whether a laminated card is current, open cards/current/index.html.
"""


def make_portable(folder: Path, name: str, date: str) -> None:
    """Take away what no folder needs and add a file that says how to begin; `date` is the day of the copy."""
    for left in _FOR_SERVERS:
        (folder / left).unlink(missing_ok=True)
    for path in folder.rglob(f"*{_MAPS}"):
        path.unlink()
    day = datetime.date.fromisoformat(date)
    text = _READ_ME.format(name=name, day=f"{day.day} {day:%B %Y}")
    (folder / READ_ME).write_text(text, encoding="utf-8", newline="\n")


def pack_folder(folder: Path, target: Path, top: str, date: str) -> None:
    """Write a folder as a ZIP in which all lies below `top`.

    The same files on the same day give the same bytes. A ZIP knows no day before 1980.
    """
    day = max(datetime.date.fromisoformat(date), datetime.date(1980, 1, 1))
    with zipfile.ZipFile(target, "w") as packed:
        for path, content in _files(folder):
            entry = zipfile.ZipInfo(f"{top}/{path}", (day.year, day.month, day.day, 0, 0, 0))
            entry.create_system = 3  # one system's way of writing rights, whatever machine packs it
            entry.external_attr = 0o100644 << 16
            packed.writestr(entry, content, zipfile.ZIP_DEFLATED, compresslevel=9)


def refuse_strange_zip(path: Path, top: str) -> None:
    """Raise NewelError where a file of the ZIP's name is no copy of a site of ours; it would be replaced."""
    if not path.exists():
        return
    try:
        with zipfile.ZipFile(path) as packed:
            ours = f"{top}/{_MARK}" in packed.namelist()
    except (OSError, zipfile.BadZipFile):
        ours = False
    if not ours:
        raise NewelError(
            "strange-folder",
            f"{path} is there already and is no site that Newel packed",
            "it would be replaced",
            "name another folder, or move that file away yourself",
        )


def _files(folder: Path) -> Iterator[tuple[str, bytes]]:
    for path in sorted(path for path in folder.rglob("*") if path.is_file()):
        yield path.relative_to(folder).as_posix(), path.read_bytes()
