"""Whole sites, each built by a process of its own, against MkDocs and Material laying out ready Markdown."""

import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from bench.measuring import Pair, Times, Used, run_process
from bench.rows import Row, not_measured, pair_row, shown
from tests.many_labs import write_many, write_markdown

_BUILD = "from generator.cli import main; main(['build'])"
_INDEX = "search/search_index.json"


@dataclass(frozen=True, slots=True)
class Built:
    """Both sites of one size: how often, what each run used, where they lie."""

    count: int
    ours: tuple[Used, ...]
    theirs: tuple[Used, ...]
    site: Path
    other: Path

    @property
    def failed(self) -> str:
        """Why there is nothing to compare, empty where there is."""
        bad = next((used for used in (*self.ours, *self.theirs) if used.status), None)
        return bad.said.splitlines()[0][:100] if bad and bad.said else "a build failed" if bad else ""


def build_rows(folder: Path, most: int) -> Iterator[Row]:
    """CPU, memory and index size at N = 10, 100, 1,000, and the growth from the second to the last."""
    done: list[Built] = []
    for count in (10, 100, 1000):
        if count > most:
            continue
        built = _build_both(folder / str(count), count, 3 if count < 1000 else 1)
        done.append(built)
        yield from _size_rows(built)
    good = [built for built in done if not built.failed]
    if len(good) == 3:
        large, small = (_cpu(one.ours).median for one in (good[2], good[1]))
        yield Row("full build, growth from 100 to 1,000", 1000, len(good[2].ours), shown(large),
                  f"N = 100 {shown(small)}", f"{large / small:.2f}x", "", "<= 10.5x")  # fmt: skip


def _build_both(folder: Path, count: int, runs: int) -> Built:
    write_many(folder / "lab", count)
    write_markdown(folder / "ready", count)
    ours: list[Used] = []
    theirs: list[Used] = []
    for _ in range(runs):
        ours.append(run_process((sys.executable, "-c", _BUILD), folder / "lab"))
        theirs.append(run_process((sys.executable, "-m", "mkdocs", "build", "-q"), folder / "ready"))
        if ours[-1].status:
            break
    return Built(count, tuple(ours), tuple(theirs), folder / "lab" / "site", folder / "ready" / "site")


def _size_rows(built: Built) -> Iterator[Row]:
    what = "full build from YAML, cold, CPU"
    if built.failed:
        yield not_measured(what, built.count, built.failed)
        return
    pair = Pair(_cpu(built.ours), _cpu(built.theirs))
    yield pair_row(what, built.count, "ready Markdown", pair, "<= 0.40x" if built.count == 1000 else "")
    peak, other = (max(used.peak for used in side) for side in (built.ours, built.theirs))
    yield Row("the same, peak memory", built.count, len(built.ours), f"{peak:.0f} MB",
              f"ready Markdown {other:.0f} MB", f"{peak / other:.2f}x", "", "<= 1.5x")  # fmt: skip
    size, stock = ((home / _INDEX).stat().st_size / 1e6 for home in (built.site, built.other))
    yield Row("search index", built.count, 1, f"{size:.2f} MB", f"stock index {stock:.2f} MB",
              f"{size / stock:.2f}x", "")  # fmt: skip


def _cpu(runs: tuple[Used, ...]) -> Times:
    return Times(tuple(used.cpu for used in runs))
