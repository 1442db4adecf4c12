"""Whole sites, each built by a process of its own, against MkDocs and Material laying out the same pages."""

import os
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from bench.measuring import Pair, Times, Used, run_process
from bench.ready import write_ready
from bench.rows import Row, not_measured, pair_row, shown
from tests.many_labs import procedure_id, write_many

_BUILD = "from generator.cli import main; main(['build'])"
# The first edit after a cold build costs more than those that follow it.
_SHORT_RUNS = 5
_RUNS = 3


@dataclass(frozen=True, slots=True)
class Built:
    """Both sites of one size: how often, what each run used, where they lie."""

    count: int
    ours: tuple[Used, ...]
    theirs: tuple[Used, ...]
    site: Path
    other: Path
    unchanged: tuple[Used, ...] = ()
    edited: tuple[Used, ...] = ()
    copied: float = 0.0
    alone: tuple[float, ...] = ()

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
        built = _build_both(folder / str(count), count)
        done.append(built)
        yield from _size_rows(built)
    good = [built for built in done if not built.failed]
    if len(good) == 3:
        large, small = (_cpu(one.ours).median for one in (good[2], good[1]))
        yield Row("full build, growth from 100 to 1,000", 1000, len(good[2].ours), shown(large),
                  f"N = 100 {shown(small)}", f"{large / small:.2f}x", "", "<= 10.5x")  # fmt: skip


def _build_both(folder: Path, count: int) -> Built:
    lab, ready = folder / "lab", folder / "ready"
    write_many(lab, count)
    ours: list[Used] = []
    theirs: list[Used] = []
    alone: list[float] = []
    for turn in range(_RUNS):
        set_aside(lab, ready)
        ours.append(run_process((sys.executable, "-c", _BUILD), lab))
        if ours[-1].status:
            return Built(count, tuple(ours), (), lab / "site", ready / "site")
        if turn == 0:
            write_ready(lab / "site", ready)
        theirs.append(run_process((sys.executable, "-m", "mkdocs", "build", "-q"), ready))
        alone.append(_pages_alone(lab))
    again = _again(lab) | {"copied": _write_plainly(lab / "site", folder), "alone": tuple(alone)}
    return Built(count, tuple(ours), tuple(theirs), lab / "site", ready / "site", **again)  # type: ignore[arg-type]


def set_aside(*folders: Path) -> None:
    """Begin afresh by moving away what was built in some folders, and remove nothing.

    For minutes after a file's removal ext4 looks past its number wherever it makes a new file (its source,
    `recently_deleted`), so that a site written after another was removed can take ten times as long.
    """
    for folder in folders:
        for kept in (folder / "site", folder / ".newel"):
            if kept.exists():
                kept.rename(Path(tempfile.mkdtemp(dir=folder.parent)) / kept.name)


def _pages_alone(lab: Path) -> float:
    """CPU seconds of a cold build without reading, walk, rules and views."""
    set_aside(lab)
    words = (sys.executable, "-m", "bench.alone")
    said = subprocess.run(words, cwd=lab, capture_output=True, check=True, text=True, env=_with_bench())
    return float(said.stdout.splitlines()[-1])


def _with_bench() -> dict[str, str]:
    """The environment of a process that finds the benchmark itself from another folder."""
    return {**os.environ, "PYTHONPATH": str(Path(__file__).parents[1]), "NO_MKDOCS_2_WARNING": "1"}


def _again(lab: Path) -> dict[str, object]:
    """Builds after which nothing was changed, and builds after one sentence of one procedure was."""
    words = (sys.executable, "-c", _BUILD)
    unchanged = tuple(run_process(words, lab) for _ in range(_SHORT_RUNS))
    edited: list[Used] = []
    for turn in range(_SHORT_RUNS):
        file = lab / "procedures" / f"{procedure_id(turn)}.yml"
        text = file.read_text(encoding="utf-8")
        file.write_text(text.replace("Lid off.", "Take the lid off.", 1), encoding="utf-8")
        edited.append(run_process(words, lab))
    return {"unchanged": unchanged, "edited": tuple(edited)}


def _write_plainly(site: Path, folder: Path) -> float:
    """CPU seconds of writing the bytes of a whole site into files."""
    files = [(path.relative_to(site), path.read_bytes()) for path in site.rglob("*") if path.is_file()]
    start = time.process_time()
    for path, content in files:
        target = folder / "plain" / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_bytes(content)
    return time.process_time() - start


def _size_rows(built: Built) -> Iterator[Row]:
    what = "full build from YAML, cold, CPU"
    if built.failed:
        yield not_measured(what, built.count, built.failed)
        return
    pair = Pair(_cpu(built.ours), _cpu(built.theirs))
    yield pair_row(what, built.count, "ready Markdown", pair, "<= 0.40x" if built.count == 1000 else "")
    alone = Pair(Times(built.alone), pair.yardstick)
    yield pair_row("the same, pages alone, from finished views, CPU", built.count, "ready Markdown", alone,
                   "<= 0.20x" if built.count == 1000 else "")  # fmt: skip
    yield _beside("the same, nothing changed", built, built.unchanged, "<= 0.02x")
    yield _beside("the same, one sentence of one procedure changed", built, built.edited, "<= 0.05x")
    plain = f"plain write of the same bytes {shown(built.copied)}"
    yield Row(what, built.count, len(built.ours), shown(pair.ours.median), plain,
              f"{pair.ours.median / max(built.copied, 1e-3):.0f}x", "")  # fmt: skip
    peak, other = (max(used.peak for used in side) for side in (built.ours, built.theirs))
    yield Row("the same, peak memory", built.count, len(built.ours), f"{peak:.0f} MB",
              f"ready Markdown {other:.0f} MB", f"{peak / other:.2f}x", "",
              "<= 1.5x" if built.count == 1000 else "")  # fmt: skip
    size, stock = index_size(built.site), index_size(built.other)
    yield Row("search index", built.count, 1, f"{size:.2f} MB", f"stock index {stock:.2f} MB",
              f"{size / stock:.2f}x", "")  # fmt: skip


def index_size(site: Path) -> float:
    """Megabytes of a site's index in its first form, parts included."""
    home = site / "search"
    parts = (path.stat().st_size for path in home.glob("*/*.js"))
    return ((home / "search_index.json").stat().st_size + sum(parts)) / 1e6


def _beside(what: str, built: Built, runs: tuple[Used, ...], goal: str) -> Row:
    pair = Pair(_cpu(runs), _cpu(built.theirs))
    return pair_row(f"{what}, CPU", built.count, "ready Markdown", pair, goal if built.count == 1000 else "")


def _cpu(runs: tuple[Used, ...]) -> Times:
    return Times(tuple(used.cpu for used in runs))
