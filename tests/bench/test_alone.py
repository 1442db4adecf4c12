"""What is left out of the pages alone is what was timed, and nothing that is made gets lost on the way."""

import time
from collections.abc import Iterator

import pytest

from bench.alone import _Clock


def test_what_is_done_between_two_of_a_row_stays_in(monkeypatch: pytest.MonkeyPatch) -> None:
    now = [0.0]
    monkeypatch.setattr(time, "process_time", lambda: now[0])

    def row(count: int) -> Iterator[int]:
        for number in range(count):
            now[0] += 1
            yield number

    clock, seen = _Clock(), []
    for made in clock.walked(row)(3):
        now[0] += 100
        seen.append(made)
    assert seen == [0, 1, 2]
    assert clock.called(lambda words: list(row(words)))(2) == [0, 1]
    assert clock.seconds == 3 + 2
