"""Clock times and dates, read or refused with a fix."""

import datetime

import pytest

from generator.units import Clock, UnitsError, read_clock, read_date


def test_clock() -> None:
    assert read_clock("16:40") == Clock(1000)
    assert read_clock("9:05") == Clock(545)
    assert read_clock("24:00") == Clock(1440)
    assert str(read_clock("9:05")) == "09:05"
    assert read_clock("09:05") < read_clock("10:00")


@pytest.mark.parametrize(
    ("text", "fix"),
    [
        ("16.40", "write 16:40"),
        ("1640", "write 16:40"),
        ("4:40 pm", "write 16:40"),
        ("12:10 am", "write 00:10"),
        ("16:40:00", "write 16:40"),
        ("25:00", "write it as 16:40"),
        ("24:01", "write it as 16:40"),
        ("noon", "write it as 16:40"),
        ("13 pm", "write it as 16:40"),
        ("", "write it as 16:40"),
    ],
)
def test_clock_refused(text: str, fix: str) -> None:
    with pytest.raises(UnitsError) as caught:
        read_clock(text)
    assert caught.value.fix == fix
    assert caught.value.message == f"`{text}` is no time of day on the 24-hour clock"


def test_date() -> None:
    assert read_date("2026-06-03") == datetime.date(2026, 6, 3)
    assert read_date("2028-02-29") == datetime.date(2028, 2, 29)


@pytest.mark.parametrize(
    ("text", "fix"),
    [
        ("2026-6-3", "write it year first, as 2026-06-03"),
        ("03/06/2026", "write it year first, as 2026-06-03 or 2026-03-06"),
        ("25.12.2026", "write it year first, as 2026-12-25"),
        ("3 June", "write it year first, as 2026-06-03"),
        ("2026-02-30", "look the day up again"),
        ("9999999-01-01", "write it year first, as 2026-06-03"),
    ],
)
def test_date_refused(text: str, fix: str) -> None:
    with pytest.raises(UnitsError) as caught:
        read_date(text)
    assert caught.value.fix == fix
