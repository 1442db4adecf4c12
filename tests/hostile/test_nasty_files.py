"""Each file under nasty/ stands in a folder named after the problem that it gives, as procedure and lab."""

from pathlib import Path

import pytest

from generator.pipeline import check
from generator.problems import Level, Problem
from generator.reading import read_lab
from generator.reading.folder import Folder
from tests.hostile.doors import DAY, read_file

NASTY = Path(__file__).parent / "nasty"
BASE = Path(__file__).parents[1] / "checks" / "base"
FILES = sorted(NASTY.rglob("*.yml"))


def problems(lab: bytes, procedure: bytes) -> tuple[Problem, ...]:
    """What is told of a folder with these two files."""
    files = {"a": ("lab/a.yml", procedure)}
    folder = Folder(Path("lab"), "lab", {"lab/lab.yml": lab}, files, {}, frozenset(), None, ())
    return check(read_lab(folder), DAY).problems


@pytest.mark.parametrize("path", FILES, ids=lambda path: f"{path.parent.name}/{path.stem}")
def test_a_nasty_file_gives_its_problem_and_nothing_else_breaks(path: Path) -> None:
    data = path.read_bytes()
    read_file(data)
    good_lab, good = (BASE / "lab.yml").read_bytes(), (BASE / "procedure.yml").read_bytes()
    for found, name in ((problems(good_lab, data), "lab/a.yml"), (problems(data, good), "lab/lab.yml")):
        errors = [problem for problem in found if problem.level is Level.ERROR]
        assert any(p.rule == path.parent.name and p.where.file == name for p in errors), errors
        assert all(p.where.line >= 1 and p.where.column >= 1 and p.message and p.fix for p in errors)


def test_there_are_many() -> None:
    assert len(FILES) > 80
