"""Reading and checking, against PyYAML's C loader that reads the same text and checks nothing."""

import datetime
import re
import shutil
import sys
from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from itertools import cycle
from pathlib import Path

import yaml

from bench.measuring import Pair, by_turns, cpu_of, run_process
from bench.rows import Row, not_measured, pair_row, shown
from generator.pipeline import check
from generator.reading import open_folder, read_lab
from generator.reading.earlier import _last
from tests.many_labs import write_many

TODAY = datetime.date(2026, 11, 25)
DEMO = Path("procedures")
PLATING = "copper-the-holes.yml"
_SENTENCE = re.compile(r"^ +say: [A-Z][a-z ,]*\.$", re.MULTILINE)


def check_rows(folder: Path, runs: int) -> Iterator[Row]:
    """One long procedure, growth with the number of procedures, the demo, and a cold process."""
    if DEMO.is_dir():
        yield from _plating(folder / "plating", runs)
    yield from _many(folder, runs)
    yield from _demo(runs)
    if DEMO.is_dir():
        yield _cold(max(runs // 2, 3))


def _plating(folder: Path, runs: int) -> Iterator[Row]:
    """The demo's longest procedure alone: the lab with it against the lab without, both read and checked.

    Each run edits one sentence, as somebody who saves does; what no edit touched may be remembered.
    """
    home, bare = _lab_with(folder / "with", PLATING), _lab_with(folder / "bare")
    text = (home / PLATING).read_text(encoding="utf-8")
    edits = cycle(_SENTENCE.findall(text))

    def edit() -> None:
        sentence = next(edits)
        (home / PLATING).write_text(text.replace(sentence, f"{sentence[:-1]} now.", 1), encoding="utf-8")

    def forget_and_edit() -> None:
        _last.cache_clear()
        edit()

    ours, bare_lab = partial(_read_and_check, home), partial(_read_and_check, bare)
    edit()
    first = cpu_of(ours)
    alone = by_turns(ours, bare_lab, runs, edit)
    yield _without_lab("read + check: the plating procedure itself, edited", alone)
    whole = by_turns(ours, bare_lab, runs, forget_and_edit)
    yield _without_lab("read + check: the same, all of its file read anew", whole)
    lone = f"the same lab again {shown(alone.ours.median)}"
    yield Row("read + check: the same with its lab, first in a process", 1, 1, shown(first), lone, "", "")


def _without_lab(what: str, pair: Pair) -> Row:
    """What the procedure takes, once the lab alone is taken off."""
    row = pair_row(what, 1, "lab alone", pair, "<= 15 ms")
    ours = shown(pair.ours.median - pair.yardstick.median)
    return replace(row, ours=ours, ratio=f"1 + {pair.ratio - 1:.2f}x")


def _lab_with(folder: Path, *procedures: str) -> Path:
    for name in ("lab", "pictures"):
        shutil.copytree(DEMO / name, folder / name)
    for name in procedures:
        shutil.copy(DEMO / name, folder / name)
    return folder


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


def _cold(runs: int) -> Row:
    ours = (sys.executable, "-c", "from generator.cli import main; main(['check', 'procedures'])")
    bare = (sys.executable, "-c", "import pydantic, yaml, click")
    pair = by_turns(lambda: run_process(ours, DEMO.parent), lambda: run_process(bare, DEMO.parent), runs)
    return pair_row("newel check of the demo, cold process", 1, "three libraries", pair, "< 1 s")


def _read_and_check(folder: Path) -> None:
    check(read_lab(open_folder(folder)), TODAY)


def _load_plainly(folder: Path) -> None:
    for file in folder.rglob("*.yml"):
        yaml.load(file.read_bytes(), Loader=yaml.CBaseLoader)
