"""The schemas as files and on the screen."""

import json
from pathlib import Path

import jsonschema
import pytest

from tests.cli.running import run_newel

KINDS = ("class", "lab", "language", "procedure")


def test_schemas_are_written_one_file_a_kind(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    run = run_newel(capsys, "schema", "--out", str(tmp_path / "deep" / "er"))
    assert run.status == 0
    files = sorted((tmp_path / "deep" / "er").iterdir())
    assert [file.name for file in files] == [f"{kind}.schema.json" for kind in KINDS]
    for file in files:
        jsonschema.Draft7Validator.check_schema(json.loads(file.read_text(encoding="utf-8")))


def test_without_a_folder_all_go_to_the_screen(capsys: pytest.CaptureFixture[str]) -> None:
    run = run_newel(capsys, "schema")
    assert sorted(json.loads(run.out)) == sorted(KINDS)


def test_a_folder_that_cannot_be_written_is_refused(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "file").write_text("")
    run = run_newel(capsys, "schema", "--out", str(tmp_path / "file" / "in-it"))
    assert run.status == 2
    assert "cannot go on[not-written]" in run.err
