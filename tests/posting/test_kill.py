"""A posting that is cut off leaves what was there or the whole new issue; two who post at once are told."""

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

from generator.problems import NewelError
from generator.publishing.files import one_at_a_time, write_new, write_over
from tests.posting import labs

ROOT = Path(__file__).parents[2]
POST = ("post", labs.ID, "--reason", "Longer", "--approved-by", "instructor")


@dataclass(frozen=True)
class Poster:
    """A process that posts on demand and is cut off as told."""

    lab: Path
    asks: IO[str]
    answers: IO[str]

    def post(self, how: str) -> float:
        """Post once; the seconds it took."""
        self.asks.write(f"{how}\n")
        self.asks.flush()
        while not (line := self.answers.readline()).startswith("ended"):
            assert line, "the process that posts has ended"
        return float(line.split()[1])

    def issues(self) -> int:
        """How many issues there are, once all of them are proved to be whole."""
        shelf = labs.opened(self.lab)[1].shelf
        assert shelf.altered == ()
        assert all(file.read() is not None for file in shelf.issues[labs.ID])
        return len(shelf.issues[labs.ID])

    def take_back(self) -> None:
        """Away with issue 2, for the next try."""
        (self.lab / "posted" / labs.ID / "2.yml").unlink(missing_ok=True)


@pytest.fixture
def poster(tmp_path: Path, first_issue: Path) -> Iterator[Poster]:
    shutil.copytree(first_issue, tmp_path / "procedures")
    labs.write(tmp_path / "procedures", edit="change in {for: 8 min}")
    words = [sys.executable, str(Path(__file__).parent / "killing.py"), *POST]
    env = {**os.environ, "SOURCE_DATE_EPOCH": "1795600000", "PYTHONPATH": str(ROOT)}
    with subprocess.Popen(
        words, cwd=tmp_path, env=env, text=True, stdin=subprocess.PIPE, stdout=subprocess.PIPE
    ) as process:
        assert process.stdin and process.stdout
        yield Poster(tmp_path / "procedures", process.stdin, process.stdout)
        process.stdin.close()
        process.wait(10)


def test_killed_at_fifty_moments(poster: Poster) -> None:
    length = poster.post("whole")
    assert poster.issues() == 2
    chance = random.Random(50)
    for _ in range(50):
        poster.take_back()
        poster.post(f"{chance.uniform(0.1, 1.05) * length:.3f}")
        assert poster.issues() in (1, 2)
    poster.take_back()
    poster.post("whole")
    assert poster.issues() == 2
    assert not list(poster.lab.rglob("*.part"))


@pytest.mark.parametrize(("call", "issues"), [("fsync", 1), ("link", 1)])
def test_killed_while_it_writes(poster: Poster, call: str, issues: int) -> None:
    poster.post(call)
    assert poster.issues() == issues
    assert list(poster.lab.rglob("*.part"))
    poster.post("whole")
    assert poster.issues() == 2
    assert not list(poster.lab.rglob("*.part"))


def test_of_two_who_write_one_issue_one_is_told(tmp_path: Path) -> None:
    write_new(tmp_path / "1.yml", "mine")
    with pytest.raises(NewelError) as told:
        write_new(tmp_path / "1.yml", "yours")
    assert told.value.id == "posted-meanwhile"
    assert (tmp_path / "1.yml").read_text() == "mine"
    write_over(tmp_path / "1.yml", "ours")
    assert [file.name for file in tmp_path.iterdir()] == ["1.yml"]


def test_who_comes_second_is_told(tmp_path: Path) -> None:
    with (
        one_at_a_time(tmp_path / "posted"),
        pytest.raises(NewelError) as told,
        one_at_a_time(tmp_path / "posted"),
    ):
        raise AssertionError
    assert told.value.id == "posting-already"
