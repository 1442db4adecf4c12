"""Reading and checking, against PyYAML's C loader that reads the same text and checks nothing."""

import datetime
import sys
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import yaml

from bench.measuring import by_turns, run_process
from bench.rows import Row, not_measured, pair_row, shown
from generator.pipeline import check
from generator.reading import open_folder, read_lab
from tests.many_labs import write_many

TODAY = datetime.date(2026, 11, 25)
STEPS = 58
DEMO = Path("procedures")


def check_rows(folder: Path, runs: int) -> Iterator[Row]:
    """One long procedure, growth with the number of procedures, the demo, and a cold process."""
    yield from _one_procedure(folder / "one", runs)
    yield from _many(folder, runs)
    yield from _demo(runs)
    yield _cold(folder / "one", max(runs // 2, 3))


def _one_procedure(folder: Path, runs: int) -> Iterator[Row]:
    """The procedure alone: a lab with it against the same lab without it, both read and checked whole."""
    home = write_many(folder, 1, STEPS)
    bare = write_many(folder / "bare", 0)
    with_it = by_turns(lambda: _read_and_check(home), lambda: _load_plainly(home), runs)
    yield pair_row(f"read + check: lab with one procedure of {STEPS} steps", 1, "C YAML", with_it)
    alone = by_turns(lambda: _read_and_check(home), lambda: _read_and_check(bare), runs)
    difference = shown(alone.ours.median - alone.yardstick.median)
    row = pair_row(f"read + check: a procedure of {STEPS} steps itself", 1, "lab alone", alone, "<= 15 ms")
    yield replace(row, ours=difference, ratio=f"1 + {alone.ratio - 1:.2f}x")


def _many(folder: Path, runs: int) -> Iterator[Row]:
    ten = write_many(folder / "ten", 10)
    hundred = write_many(folder / "hundred", 100)
    pair = by_turns(lambda: _read_and_check(hundred), lambda: _read_and_check(ten), max(runs // 3, 3))
    yield pair_row("read + check: 100 procedures of 12 steps", 100, "10 of them", pair, "<= 10.5x")


def _demo(runs: int) -> Iterator[Row]:
    if not DEMO.is_dir():
        yield not_measured("read the demo", 1, "there is no folder procedures here")
        return
    read = by_turns(lambda: read_lab(open_folder(DEMO)), lambda: _load_plainly(DEMO), runs)
    yield pair_row("read the demo", 1, "C YAML", read)
    checked = by_turns(lambda: _read_and_check(DEMO), lambda: _load_plainly(DEMO), runs)
    yield pair_row("read + check the demo", 1, "C YAML", checked)


def _cold(folder: Path, runs: int) -> Row:
    ours = (sys.executable, "-c", "from generator.cli import main; main(['check'])")
    bare = (sys.executable, "-c", "import pydantic, yaml, click")
    pair = by_turns(lambda: run_process(ours, folder), lambda: run_process(bare, folder), runs)
    return pair_row("newel check, cold process", 1, "import of pydantic, yaml, click", pair, "< 1 s")


def _read_and_check(folder: Path) -> None:
    check(read_lab(open_folder(folder)), TODAY)


def _load_plainly(folder: Path) -> None:
    for file in folder.rglob("*.yml"):
        yaml.load(file.read_bytes(), Loader=yaml.CBaseLoader)
