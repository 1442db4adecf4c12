"""A build that is killed leaves the last site or the new one, whole, and nothing lying about for ever."""

import hashlib
import os
import random
import shutil
import subprocess
import sys
from collections.abc import Iterator
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


def killed(builder: Builder, kind: str, times: int, chance: random.Random) -> None:
    """Builds of two texts in turn, each cut off at a moment of its own."""
    whole = set()
    for minutes in (7, 8):
        builder.write(minutes)
        length = builder.build(f"{kind}whole")
        whole.add(builder.site())
    assert len(whole) == 2
    for turn in range(times):
        builder.write(7 + turn % 2)
        builder.build(f"{kind}{chance.uniform(0.05, 1.02) * length:.3f}")
        assert builder.site() in whole
    builder.write(7)
    builder.build(f"{kind}whole")
    assert builder.site() in whole
    assert [path.name for path in (builder.home / ".newel").glob("site-*")] == []


def test_killed_at_fifty_moments(builder: Builder) -> None:
    killed(builder, "small ", 44, random.Random(44))
    killed(builder, "", 6, random.Random(6))


def test_killed_in_the_call_that_puts_the_first_site_in_its_place(builder: Builder) -> None:
    builder.build("small whole")
    shutil.rmtree(builder.home / "site")
    builder.build("small rename")
    assert not (builder.home / "site").exists()
    builder.build("small whole")
    assert (builder.home / "site" / "index.html").is_file()
