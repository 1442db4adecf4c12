"""Whatever bytes a folder holds: a located problem or a reason, never a traceback."""

import json
import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from tests.checks.cases import BASE
from tests.cli.running import make_lab, run_newel

Capsys = pytest.CaptureFixture[str]
PROCEDURE = (BASE / "procedure.yml").read_bytes()
LAB = (BASE / "lab.yml").read_bytes()
STRANGE = st.sampled_from([b"", b"\n", b"  ", b"{", b"]", b": ", b"- ", b'"', b"1e999", b"~", b"\t", b"*"])
FORMS = ("text", "json", "github", "sarif")
MANY = settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])


@contextmanager
def folder_with(lab: bytes, procedure: bytes) -> Iterator[Path]:
    """A folder `procedures` for as long as the block runs, and this process in its parent."""
    before = Path.cwd()
    home = Path(tempfile.mkdtemp())
    (home / "procedures").mkdir()
    (home / "procedures" / "lab.yml").write_bytes(lab)
    (home / "procedures" / "clean-a-plate.yml").write_bytes(procedure)
    os.chdir(home)
    try:
        yield home / "procedures"
    finally:
        os.chdir(before)
        shutil.rmtree(home)


def judge(capsys: Capsys, must_find: bool) -> None:
    """Run every form; problems are located, counts agree with the status, nothing breaks."""
    runs = {form: run_newel(capsys, "check", "--format", form) for form in FORMS}
    statuses = {run.status for run in runs.values()}
    assert len(statuses) == 1 and statuses <= {0, 1}, runs["text"].err
    told = json.loads(runs["json"].out)
    errors = [problem for problem in told["problems"] if problem["level"] == "error"]
    assert (statuses == {1}) == bool(errors) == bool(told["counts"]["error"])
    assert errors or not must_find
    for problem in told["problems"]:
        assert problem["file"].startswith("procedures/") and problem["line"] >= 1 and problem["column"] >= 1
        assert problem["message"] and problem["fix"]
    assert all(run.err == "" for run in runs.values())


@MANY
@given(st.binary(max_size=200))
@example(b"")
@example(b"\xff\xfe\x00t")
@example(b"\xef\xbb\xbf")
@example(b"[" * 5000)
@example(b"stages: " + b"- " * 200)
@example(b"title: &a [*a, *a]")
@example(b"a: !!python/object/apply:os.system [ls]")
def test_random_bytes_as_a_procedure(capsys: Capsys, data: bytes) -> None:
    with folder_with(LAB, data):
        judge(capsys, must_find=True)


@MANY
@given(st.binary(max_size=200))
@example(b"")
@example(b"lab:\n")
@example(b"lab: []\nroles: x\n")
def test_random_bytes_as_the_lab(capsys: Capsys, data: bytes) -> None:
    with folder_with(data, PROCEDURE):
        judge(capsys, must_find=True)


@MANY
@given(st.text(max_size=80))
@example("lab: {name: a")
@example("places: {bath: {number: ٣}}")
def test_random_text_behind_a_good_lab(capsys: Capsys, text: str) -> None:
    with folder_with(LAB + b"\n" + text.encode("utf-8", "replace"), PROCEDURE):
        judge(capsys, must_find=False)


@MANY
@given(st.data())
def test_a_good_procedure_with_a_piece_gone_or_strange(capsys: Capsys, data: st.DataObject) -> None:
    start = data.draw(st.integers(0, len(PROCEDURE)))
    end = data.draw(st.integers(start, min(len(PROCEDURE), start + 120)))
    strange = data.draw(STRANGE)
    with folder_with(LAB, PROCEDURE[:start] + strange + PROCEDURE[end:]):
        judge(capsys, must_find=False)


@MANY
@given(st.data())
def test_a_good_lab_with_a_piece_gone_or_strange(capsys: Capsys, data: st.DataObject) -> None:
    start = data.draw(st.integers(0, len(LAB)))
    end = data.draw(st.integers(start, min(len(LAB), start + 120)))
    strange = data.draw(STRANGE)
    with folder_with(LAB[:start] + strange + LAB[end:], PROCEDURE):
        judge(capsys, must_find=False)


def test_a_file_name_that_is_no_text(tmp_path: Path, capsys: Capsys, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    home = make_lab(tmp_path)
    (home / os.fsdecode(b"\xff\x1b[31m\n.yml")).write_text("title: x\n")
    judge(capsys, must_find=True)


def test_things_that_are_no_files(tmp_path: Path, capsys: Capsys, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    home = make_lab(tmp_path)
    (home / "folder.yml").mkdir()
    (home / "gone.yml").symlink_to("nothing-here.yml")
    (home / "round.yml").symlink_to("round.yml")
    (home / "out.yml").symlink_to(tmp_path / "elsewhere.yml")
    judge(capsys, must_find=True)
