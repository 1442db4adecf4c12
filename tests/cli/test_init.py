"""A new lab's folder: it checks clean, an editor finds its schemas, and the recipes run what they name."""

import json
import os
import re
from pathlib import Path

import jsonschema
import pytest

from generator.cli.init import FILES
from generator.cli.schema import schema_files
from generator.notation import plain, read_text
from tests.cli.running import run_newel

ROOT = Path(__file__).parents[2]
MODELINE = re.compile(r"# yaml-language-server: \$schema=(\S+)\n")


@pytest.fixture
def lab(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    assert run_newel(capsys, "init", str(tmp_path / "lab")).status == 0
    return tmp_path / "lab"


def test_a_new_lab_has_no_problem_at_all(lab: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert json.loads(run_newel(capsys, "check", str(lab), "--format", "json").out)["problems"] == []


def test_editors_find_a_schema_that_the_file_keeps(lab: Path) -> None:
    for file in (lab / "procedures").glob("*.yml"):
        text = file.read_text()
        named = MODELINE.match(text)
        assert named, file
        schema = json.loads((file.parent / named[1]).read_text())
        root = read_text(text.encode(), file.name).root
        assert root
        jsonschema.Draft7Validator(schema).validate(plain(root))


def test_recipes_and_hooks_run_what_there_is(lab: Path) -> None:
    assert os.access(lab / "hooks/pre-commit", os.X_OK)
    assert {target for _, target in FILES} <= {p.relative_to(lab).as_posix() for p in lab.rglob("*")}
    for name in (".github/workflows/lab.yml", ".gitlab-ci.yml"):
        text = (lab / name).read_text()
        assert "newel check" in text
        assert "newel build" in text


def test_the_demo_lab_carries_the_schemas_of_today() -> None:
    home = ROOT / "procedures" / ".schema"
    assert {file.name: file.read_text() for file in home.glob("*.json")} == schema_files()


def test_every_file_of_the_demo_names_its_schema() -> None:
    home = ROOT / "procedures"
    for file in (*home.glob("*.yml"), *(home / "lab").glob("*.yml")):
        named = MODELINE.match(file.read_text())
        assert named, file
        assert (file.parent / named[1]).is_file(), file
