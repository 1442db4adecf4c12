"""Medians, spreads, ratios and processes, on numbers that are known."""

import sys
from pathlib import Path

import pytest

from bench.measuring import Pair, Times, by_turns, run_process
from bench.rows import not_measured, pair_row, shown, table


def test_median_and_spread() -> None:
    times = Times((1.0, 2.0, 3.0, 4.0, 100.0))
    assert times.median == 3.0
    assert times.spread == pytest.approx((52.0 - 1.5) / 3.0)  # quartiles of statistics.quantiles, exclusive


def test_a_ratio_is_median_to_median() -> None:
    assert Pair(Times((1.0, 2.0, 9.0)), Times((4.0, 4.0, 4.0))).ratio == 0.5


def test_times_are_shown_with_three_figures() -> None:
    assert [shown(seconds) for seconds in (0.01234, 0.5, 2.345)] == ["12.3 ms", "500 ms", "2.35 s"]


def test_a_table_stands_in_columns() -> None:
    pair = Pair(Times((0.01, 0.01)), Times((0.04, 0.04)))
    rows = [pair_row("a card", 1, "other", pair, "<= 0.5x"), not_measured("a site", 10, "no build")]
    assert table(rows) == (
        "| what   | N  | runs | ours         | yardstick   | ratio | spread of both | goal    |\n"
        "| ------ | -- | ---- | ------------ | ----------- | ----- | -------------- | ------- |\n"
        "| a card | 1  | 2    | 10 ms        | other 40 ms | 0.25x | 0% / 0%        | <= 0.5x |\n"
        "| a site | 10 | 0    | not measured | no build    |       |                |         |\n"
    )


def test_what_a_process_used(tmp_path: Path) -> None:
    program = "import sys; x = bytearray(50_000_000); sys.stderr.write('one\\ntwo'); sys.exit(3)"
    used = run_process((sys.executable, "-c", program), tmp_path)
    assert (used.status, used.said) == (3, "one\ntwo")
    assert used.peak > 50
    assert used.cpu > 0


def test_what_we_hold_is_not_counted_as_the_process_s_own(tmp_path: Path) -> None:
    held = b"1" * 200_000_000
    used = run_process((sys.executable, "-S", "-c", ""), tmp_path)
    assert len(held) == 200_000_000
    assert 0 < used.peak < 100


def test_what_a_child_process_works_is_counted(tmp_path: Path) -> None:
    program = (sys.executable, "-c", "sum(range(3_000_000))")
    pair = by_turns(lambda: run_process(program, tmp_path), lambda: None, 3)
    assert pair.ours.median > 0.01 > pair.yardstick.median
