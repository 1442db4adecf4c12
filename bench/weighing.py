"""What the pages of the demo lab weigh, as they stand on the disk and as a server would send them."""

import gzip
import re
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from bench.measuring import run_process
from bench.rows import Row, not_measured

# One page of each kind that has a script of its own, and one that has not.
PAGES = (
    ("procedure", "procedures/copper-the-holes/index.html"),
    ("calculator", "calculators/plating_time/index.html"),
    ("is this card current", "cards/current/index.html"),
    ("lab home", "index.html"),
)
_BUILD = "import sys; from generator.cli import main; main(['build', '--site-dir', sys.argv[1]])"
_FILES = re.compile(r'<script[^>]* src="([^"?]+)|<link[^>]* href="([^"?]+\.css)')


@dataclass(frozen=True, slots=True)
class Weight:
    """Bytes of a page with its scripts and styles; `own` are our scripts, `sent` all of it compressed."""

    own: int
    whole: int
    sent: int


def weigh_rows(folder: Path) -> Iterator[Row]:
    """Our script on each kind of page, beside all that the first reading takes."""
    site = folder / "site"
    used = run_process((sys.executable, "-c", _BUILD, str(site)), Path.cwd())
    for kind, path in PAGES:
        what = f"own script of a page: {kind}"
        if used.status:
            yield not_measured(what, 1, "the demo lab was not built")
            continue
        weight = weigh(site / path)
        rest = f"page, styles, scripts {_kilobytes(weight.whole)}, sent {_kilobytes(weight.sent)}"
        share = f"{weight.own / weight.whole:.2f}x"
        yield Row(what, 1, 1, _kilobytes(weight.own), rest, share, "", "<= 60 kB")


def weigh(page: Path) -> Weight:
    """The weight of one page of a site."""
    html = page.read_bytes()
    names = (script or style for script, style in _FILES.findall(html.decode()))
    files = {(page.parent / name).resolve() for name in names}
    contents = {path: path.read_bytes() for path in sorted(files)}
    own = sum(len(text) for path, text in contents.items() if _is_own(path))
    every = (html, *contents.values())
    return Weight(own, sum(map(len, every)), sum(len(gzip.compress(one, mtime=0)) for one in every))


def _is_own(path: Path) -> bool:
    return path.suffix == ".js" and (path.name.startswith("newel") or path.parent.name == "formulas")


def _kilobytes(size: int) -> str:
    return f"{size / 1000:.1f} kB"
