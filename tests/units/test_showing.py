"""Quantities as printed; the typography is that of NIST SP 811, chapter 7."""

import pytest

from generator.units import (
    Quantity,
    read_counted,
    read_quantity,
    read_tolerance,
    read_window,
    show_counted,
    show_number,
    show_quantity,
    show_tolerance,
    show_window,
)


def plain(text: str) -> str:
    """Visible marks for spaces that do not break."""
    return text.replace("\u00a0", "~").replace("\u202f", "'")


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("8 min", "8~min"),
        ("1.9 A/dm2", "1.9~A/dm²"),
        ("45 degC", "45~°C"),
        ("-5 degC", "−5~°C"),
        ("0.70 mohm", "0.70~mΩ"),
        ("97 %", "97~%"),
        ("6 % v/v", "6~%~v/v"),
        ("270000 mg/L", "270'000~mg/L"),
        ("1000 g", "1000~g"),
        ("1 day", "1~day"),
        ("7 days", "7~days"),
        ("5 A h", "5~A·h"),
        ("1.7241e-8 ohm m", "1.7241~×~10⁻⁸~Ω·m"),
        ("78 ShoreD", "78~Shore~D"),
    ],
)
def test_show_quantity(text: str, shown: str) -> None:
    assert plain(show_quantity(read_quantity(text))) == shown


@pytest.mark.parametrize(
    ("number", "digits", "shown"),
    [
        (54.0823, 3, "54.1"),
        (5.0, 2, "5.0"),
        (0.0999, 2, "0.10"),
        (6749.2, 3, "6750"),
        (0, 3, "0"),
        (-0.004, 1, "−0.004"),
    ],
)
def test_significant_digits(number: float, digits: int, shown: str) -> None:
    assert show_number(number, digits=digits) == shown


def test_no_negative_nothing() -> None:
    assert show_number(-0.0) == "0"
    assert show_number(1533115351265.0) == "1.53311535127\u00a0×\u00a010¹²"
    assert show_number(-0.001, 2) == "0.00"


def test_floating_dust_is_not_shown() -> None:
    assert show_number(0.1 + 0.2) == "0.3"
    assert show_number(1 / 3) == "0.333333333333"
    assert show_number(12.0 / 0.3 * 3) == "120"


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("6 to 10 min", "6 to 10~min"),
        ("24 h to 7 days", "24~h to 7~days"),
        ("up to 8 min", "up to 8~min"),
        ("at least 90 s", "at least 90~s"),
        ("8 min", "8~min"),
        ("-5 to 5 degC", "−5 to 5~°C"),
    ],
)
def test_show_window(text: str, shown: str) -> None:
    assert plain(show_window(read_window(text))) == shown


def test_show_tolerance_and_count() -> None:
    assert plain(show_tolerance(read_tolerance("0.90 +/- 0.05 mm"))) == "0.90~±~0.05~mm"
    assert plain(show_tolerance(read_tolerance("2 mm +/- 50 um"))) == "2~mm~±~50~µm"
    assert plain(show_tolerance(read_tolerance("45 +/- 2 degC"))) == "45~±~2~°C"
    assert plain(show_counted(read_counted("10 times"))) == "10~times"


def test_a_worked_out_value_has_no_decimals_of_an_author() -> None:
    assert plain(show_quantity(Quantity(9.5, "min").to("s"))) == "570~s"
