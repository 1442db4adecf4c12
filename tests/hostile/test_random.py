"""Random input to the reader, units and folder: refused with a message, never an exception, never long."""

import datetime
import time
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as some

from generator.notation import read_text
from generator.pipeline import check
from generator.reading import open_folder, read_lab
from generator.units import UnitsError, read_quantity, read_window

BASE = Path(__file__).parents[1] / "checks" / "base"
PROCEDURE = (BASE / "procedure.yml").read_text("utf-8") if (BASE / "procedure.yml").is_file() else ""
SIGNS = "abc 0123456789.,-:{}[]\"'#&*!|>%@`\n\t°µ±–\u202e\u200b\u0000\ud800\U0001f600"
LONGEST = 2.0  # seconds of CPU for one small input; a reader that backtracks takes minutes


@settings(max_examples=300)
@given(some.one_of(some.binary(max_size=400), some.text(SIGNS, max_size=200).map(
    lambda text: text.encode("utf-8", "surrogatepass"))))  # fmt: skip
def test_any_bytes_are_a_file_or_a_problem(data: bytes) -> None:
    start = time.process_time()
    document = read_text(data, "x.yml")
    assert document.root is not None or document.problems
    assert time.process_time() - start < LONGEST


@settings(max_examples=500)
@given(some.text(max_size=80))
def test_any_text_is_a_quantity_or_refused(text: str) -> None:
    start = time.process_time()
    for read in (read_quantity, read_window):
        try:
            read(text)
        except UnitsError as refused:
            assert refused.message and refused.fix
    assert time.process_time() - start < LONGEST


@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(some.integers(0, max(len(PROCEDURE) - 1, 0)), some.integers(0, 30), some.text(SIGNS[:-4], max_size=12))
def test_a_procedure_with_a_piece_torn_out_is_checked_to_the_end(
    tmp_path: Path, start: int, length: int, put: str
) -> None:
    home = tmp_path / "lab"
    home.mkdir(exist_ok=True)
    (home / "lab.yml").write_bytes((BASE / "lab.yml").read_bytes())
    torn = PROCEDURE[:start] + put + PROCEDURE[start + length :]
    (home / "clean.yml").write_text(torn, "utf-8")
    begun = time.process_time()
    check(read_lab(open_folder(home)), datetime.date(2026, 11, 25))
    assert time.process_time() - begun < LONGEST


_NESTED = ("[" * 5000, "{a: " * 5000, "- " * 5000 + "a", "a: &a [*a, *a]", "? " * 3000)


@pytest.mark.parametrize("text", _NESTED)
def test_nested_and_looped_files_are_refused_soon(text: str) -> None:
    start = time.process_time()
    assert read_text(text.encode(), "x.yml").problems
    assert time.process_time() - start < LONGEST


def test_a_link_out_of_the_folder_is_not_followed(tmp_path: Path) -> None:
    outside = tmp_path / "outside.yml"
    outside.write_text("title: secret\n", "utf-8")
    home = tmp_path / "lab"
    home.mkdir()
    (home / "lab.yml").write_bytes((BASE / "lab.yml").read_bytes())
    (home / "leak.yml").symlink_to(outside)
    found = open_folder(home)
    assert "leak" not in found.procedures
    assert [problem for problem in found.problems if "leak.yml" in str(problem.where)]
