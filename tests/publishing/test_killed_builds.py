"""A build that is killed leaves the last site or the new one, whole, and nothing lying about for ever."""

import hashlib
import os
import random
import shutil
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import IO

import pytest

from tests.posting import labs

ROOT = Path(__file__).parents[2]


@dataclass(frozen=True)
class Builder:
    """A process that builds on demand and is cut off as told."""

    home: Path
    asks: IO[str]
    answers: IO[str]

    def build(self, how: str) -> float:
        """Build once; the seconds it took."""
        self.asks.write(f"{how}\n")
        self.asks.flush()
        while not (line := self.answers.readline()).startswith("ended"):
            assert line, "the process that builds has ended"
        return float(line.split()[1])

    def write(self, minutes: int) -> None:
        """Another text of the lab."""
        labs.write(self.home / "procedures", edit=f"change in {{for: {minutes} min}}")

    def site(self) -> str:
        """A digest of every file of the site."""
        folder, found = self.home / "site", hashlib.sha256()
        for path in sorted(path for path in folder.rglob("*") if path.is_file()):
            found.update(f"{path.relative_to(folder)}\0".encode() + path.read_bytes())
        return found.hexdigest()


@pytest.fixture
def builder(tmp_path: Path) -> Iterator[Builder]:
    words = [sys.executable, str(Path(__file__).parent / "killed_builds.py"), "build", "--draft"]
    labs.write(tmp_path / "procedures")
    env = {**os.environ, "SOURCE_DATE_EPOCH": "1795600000", "PYTHONPATH": str(ROOT)}
    with subprocess.Popen(
        words, cwd=tmp_path, env=env, text=True, stdin=subprocess.PIPE, stdout=subprocess.PIPE
    ) as process:
        assert process.stdin and process.stdout
        yield Builder(tmp_path, process.stdin, process.stdout)
        process.stdin.close()
        process.wait(20)


def whole_sites(builder: Builder, build: Callable[[], float]) -> tuple[set[str], float]:
    """The sites of two texts, and how long a build takes."""
    found, lengths = set(), []
    for minutes in (7, 8):
        builder.write(minutes)
        lengths.append(build())
        found.add(builder.site())
    assert len(found) == 2
    return found, min(lengths)


def test_killed_at_forty_four_moments(builder: Builder) -> None:
    """Two texts in turn, each build cut off at a moment of its own."""
    whole, length = whole_sites(builder, lambda: builder.build("whole"))
    chance = random.Random(44)
    for turn in range(44):
        builder.write(7 + turn % 2)
        builder.build(f"{chance.uniform(0.05, 1.02) * length:.3f}")
        assert builder.site() in whole
    for minutes in (7, 8):  # a build that finds nothing changed sweeps nothing; the second has a change
        builder.write(minutes)
        builder.build("whole")
        assert builder.site() in whole
    assert [path.name for path in (builder.home / ".newel").glob("site-new-*")] == []


def test_the_whole_command_killed_at_six_moments(tmp_path: Path) -> None:
    builder = Builder(tmp_path, sys.stdin, sys.stdin)
    whole, length = whole_sites(builder, lambda: run_whole(tmp_path, None))
    chance = random.Random(6)
    for turn in range(6):
        builder.write(7 + turn % 2)
        run_whole(tmp_path, chance.uniform(0.3, 1.0) * length)
        assert builder.site() in whole
    run_whole(tmp_path, None)
    assert builder.site() in whole


def run_whole(home: Path, moment: float | None) -> float:
    """The command in a process of its own, killed at a moment; the seconds it took."""
    started = time.monotonic()
    words = [str(Path(sys.executable).with_name("newel")), "build", "--draft"]
    env = {**os.environ, "SOURCE_DATE_EPOCH": "1795600000", "PYTHONPATH": str(ROOT)}
    with subprocess.Popen(words, cwd=home, env=env, stdout=subprocess.DEVNULL) as process:
        try:
            process.wait(moment)
        except subprocess.TimeoutExpired:
            process.kill()
    return time.monotonic() - started


def test_killed_in_the_call_that_puts_the_first_site_in_its_place(builder: Builder) -> None:
    builder.build("whole")
    shutil.rmtree(builder.home / "site")
    builder.build("rename")
    assert not (builder.home / "site").exists()
    builder.build("whole")
    assert (builder.home / "site" / "index.html").is_file()
