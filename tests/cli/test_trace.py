"""The trace of a small procedure, step by step."""

from pathlib import Path

import pytest

from tests.cli.running import make_lab, run_newel


@pytest.fixture
def trace(tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> list[str]:
    monkeypatch.chdir(tmp_path)
    make_lab(tmp_path)
    run = run_newel(capsys, "check", "--trace", "clean-a-plate")
    assert run.status == 0
    return run.out.split("\n\n")


def test_a_trace_begins_with_what_it_is(trace: list[str]) -> None:
    assert trace[0] == (
        "clean-a-plate: Clean a plate\n"
        "What the walk believes after each step when nothing fails; > marks what it changed."
    )


def test_a_trace_has_every_step_once(trace: list[str]) -> None:
    ids = [block.split()[1] for block in trace[1:]]
    assert ids[:4] == ["rack", "wear-on", "lid-off", "in"]
    assert ids[4:] == ["out", "lid-on", "spray", "tray", "blow", "wear-off", "look"]


def test_the_part_in_a_bath(trace: list[str]) -> None:
    assert trace[4] == """\
  4  in  put-in at cleaner bath (station 1), done at 11 min
   > part     in cleaner bath (station 1) since in, wet (dripping since in), not looked at
   > on it    cleaner film since in
     rack     plastic rack since rack
     worn     splash goggles, lab coat, chemical apron, nitrile gloves (touched: cleaner bath (station 1))
     open     cleaner bath (station 1) since lid-off"""


def test_a_lid_that_closes_and_a_tray_that_fills(trace: list[str]) -> None:
    assert "   > open     none" in trace[6].splitlines()
    assert "   > tray     deionised spray: water with cleaner film for rinse jug" in trace[7].splitlines()
    assert "   > tray     none" in trace[8].splitlines()


def test_what_comes_off_at_the_end(trace: list[str]) -> None:
    assert "   > worn     splash goggles, lab coat" in trace[10].splitlines()


def test_a_procedure_that_cannot_be_understood_is_not_traced(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    make_lab(tmp_path, **{"procedures/broken.yml": "title: [\n"})
    run = run_newel(capsys, "check", "--trace", "broken")
    assert run.status == 2
    assert run.err.startswith("cannot go on[not-walked]: broken was not walked\n")
