"""What authors write, read or refused with the words that they will see."""

import time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.units import (
    UNITS,
    Quantity,
    Tolerance,
    UnitsError,
    Window,
    nearest_unit,
    read_counted,
    read_number,
    read_numbers_window,
    read_quantity,
    read_tolerance,
    read_unit,
    read_window,
    show_quantity,
    write_quantity,
)

READ = [
    ("1.9 A/dm2", 1.9, "A/dm2"),
    ("1.9 A/dm²", 1.9, "A/dm2"),
    ("2 A dm-2", 2, "A/dm2"),
    ("18 g/L", 18, "g/L"),
    ("6 % v/v", 6, "% v/v"),
    ("97 %", 97, "%"),
    ("97%", 97, "%"),
    ("100 parts", 100, "parts"),
    ("2.5 L", 2.5, "L"),
    ("12 months", 12, "month"),
    ("2 weeks", 2, "week"),
    ("1 h", 1, "h"),
    ("1 hr", 1, "h"),
    ("8min", 8, "min"),
    ("8 minutes", 8, "min"),
    ("45 °C", 45, "degC"),
    ("45°C", 45, "degC"),
    ("45 ℃", 45, "degC"),
    ("45 degC", 45, "degC"),
    ("-5 degC", -5, "degC"),
    ("−5 °C", -5, "degC"),
    ("22 um", 22, "um"),
    ("22 µm", 22, "um"),
    ("22 μm", 22, "um"),
    ("22 microns", 22, "um"),
    ("4 cm²", 4, "cm2"),
    ("4 mm^2", 4, "mm2"),
    ("4 mm2", 4, "mm2"),
    ("0.70 mΩ", 0.7, "mohm"),
    ("0.70 mΩ", 0.7, "mohm"),
    ("5 A h", 5, "A h"),
    ("5 A·h", 5, "A h"),
    ("5 Ah", 5, "A h"),
    ("5 mL/(A h)", 5, "mL/(A h)"),
    ("5 mL/(A·h)", 5, "mL/(A h)"),
    ("5 mL per L", 5, "mL/L"),
    ("0.05 M", 0.05, "mol/L"),
    ("1.7241e-8 ohm m", 1.7241e-8, "ohm m"),
    ("1.7241 × 10⁻⁸ Ω·m", 1.7241e-8, "ohm m"),
    ("270\u202f000 mg/L", 270000, "mg/L"),
    ("\uff11\uff12 min", 12, "min"),
    ("60 HRC", 60, "HRC"),
    ("78 Shore D", 78, "ShoreD"),
    ("12 A/ft2", 12, "A/ft2"),
    ("30 boards", 30, "boards"),
]


@pytest.mark.parametrize(("text", "number", "unit"), READ)
def test_read_quantity(text: str, number: float, unit: str) -> None:
    assert read_quantity(text) == Quantity(number, unit)


A_UNIT = "write a number and a unit, such as 8 min"
REFUSED = [
    ("3,5 min", "`3,5 min` cannot be read as a quantity", "write 3.5 min"),
    ("6–10 min", "`6–10 min` cannot be read as a quantity", "write 6 to 10 min"),
    ("6-10 min", "`6-10 min` cannot be read as a quantity", "write 6 to 10 min"),
    ("6 - 10 min", "`6 - 10 min` cannot be read as a quantity", "write 6 to 10 min"),
    ("5–10 mL", "`5–10 mL` cannot be read as a quantity", "write 5 to 10 mL"),
    ("1,5 mL", "`1,5 mL` cannot be read as a quantity", "write 1.5 mL"),
    ("8 mim", "`mim` is no unit that this lab's tools know; did you mean min?", "write 8 min"),
    (
        "8:30",
        "`8:30` cannot be read as a quantity",
        "write 510 s if minutes and seconds are meant, or 510 min if hours and minutes are",
    ),
    ("1O min", "`1O min` cannot be read as a quantity", "write 10 min"),
    ("8", "`8` has no unit", "write the unit after the number, such as 8 min"),
    ("20 C", "`C` is no unit that this lab's tools know; did you mean degC?", "write 20 degC"),
    ("70 F", "`F` is no unit that this lab's tools know; did you mean degF?", "write 70 degF"),
    ("8 mn", "`mn` is no unit that this lab's tools know; did you mean min?", "write 8 min"),
    ("8 Min", "`Min` is no unit that this lab's tools know; did you mean min?", "write 8 min"),
    ("1.5.2 min", "`1.5.2 min` is no quantity", A_UNIT),
    ("inf", "`inf` is no quantity", A_UNIT),
    ("nan", "`nan` is no quantity", A_UNIT),
    ("nan min", "`nan min` is no quantity", A_UNIT),
    ("ten minutes", "`ten minutes` is no quantity", A_UNIT),
    ("1e999", "`1e999` is no quantity", A_UNIT),
    ("1e999 s", "`1e999 s` is too large or too small for any bench", "check the power of ten"),
    ("1e-99 s", "`1e-99 s` is too large or too small for any bench", "check the power of ten"),
    ("", "a quantity is expected and nothing is written", A_UNIT),
    ("  ", "a quantity is expected and nothing is written", A_UNIT),
    ("1,000 g", "`1,000 g` cannot be read as a quantity", "write 1000 g if a thousand is meant, or 1.000 g"),
    ("1 000 g", "`1 000 g` cannot be read as a quantity", "write 1000 g"),
    ("<= 8 min", "`<= 8 min` cannot be read as a quantity", "write up to 8 min"),
    ("≥ 90 s", "`≥ 90 s` cannot be read as a quantity", "write at least 90 s"),
    ("max. 8 min", "`max. 8 min` cannot be read as a quantity", "write up to 8 min"),
    ("8 ± 2 min", "`8 ± 2 min` cannot be read as a quantity", "write 6 to 10 min"),
    ("1 h 30 min", "`1 h 30 min` cannot be read as a quantity", "write 90 min"),
    (".5 min", "`.5 min` cannot be read as a quantity", "write 0.5 min"),
    ("5. min", "`5. min` cannot be read as a quantity", "write 5 min"),
    ("6 to 10 min", "`6 to 10 min` is a window, and one value is expected here", "write one value"),
    ("٣ min", "`٣ min` is no quantity", A_UNIT),
    (
        "8 blorp",
        "`blorp` is no unit that this lab's tools know",
        "write an SI unit such as min, mm, g/L or degC",
    ),
]


@pytest.mark.parametrize(("text", "message", "fix"), REFUSED)
def test_read_quantity_refuses(text: str, message: str, fix: str) -> None:
    with pytest.raises(UnitsError) as caught:
        read_quantity(text)
    assert (caught.value.rule, caught.value.message, caught.value.fix) == ("unit-missing", message, fix)


WINDOWS = [
    ("6 to 10 min", Quantity(6, "min"), Quantity(10, "min")),
    ("6 min to 10 min", Quantity(6, "min"), Quantity(10, "min")),
    ("24 h to 7 days", Quantity(24, "h"), Quantity(7, "day")),
    ("up to 8 min", None, Quantity(8, "min")),
    ("up to 0.70 mohm", None, Quantity(0.7, "mohm")),
    ("at least 90 s", Quantity(90, "s"), None),
    ("at least 78 ShoreD", Quantity(78, "ShoreD"), None),
    ("58 to 62 HRC", Quantity(58, "HRC"), Quantity(62, "HRC")),
    ("-5 to 5 degC", Quantity(-5, "degC"), Quantity(5, "degC")),
    ("8 min", Quantity(8, "min"), Quantity(8, "min")),
]


@pytest.mark.parametrize(("text", "low", "high"), WINDOWS)
def test_read_window(text: str, low: Quantity | None, high: Quantity | None) -> None:
    assert read_window(text) == Window(low, high)


WINDOWS_REFUSED = [
    ("10 to 6 min", "`10 to 6 min` goes down: its low side is above its high side", "write 6 to 10 min"),
    (
        "2 h to 30 min",
        "`2 h to 30 min` goes down: its low side is above its high side",
        "write 30 min to 2 h",
    ),
    (
        "6 min to 10 mm",
        "`6 min to 10 mm` goes from a time to a length",
        "give both sides in units of the same kind",
    ),
    ("6 to 10", "`6 to 10` has no unit", "write the unit after the number, such as 10 min"),
    ("up to 3,5 min", "`up to 3,5 min` cannot be read as a quantity", "write up to 3.5 min"),
    ("up to 8", "`up to 8` has no unit", "write the unit after the number, such as 8 min"),
    (
        "6 to to 10 min",
        "`6 to to 10 min` is no quantity",
        "write a window with its unit, such as 6 to 10 min",
    ),
    ("20 to 30 C", "`C` is no unit that this lab's tools know; did you mean degC?", "write 30 degC"),
]


@pytest.mark.parametrize(("text", "message", "fix"), WINDOWS_REFUSED)
def test_read_window_refuses(text: str, message: str, fix: str) -> None:
    with pytest.raises(UnitsError) as caught:
        read_window(text)
    assert (caught.value.rule, caught.value.message, caught.value.fix) == ("unit-missing", message, fix)


def test_numbers_have_no_unit() -> None:
    assert read_numbers_window("9.5 to 10.4") == Window(Quantity(9.5, ""), Quantity(10.4, ""))
    assert read_numbers_window("up to 1") == Window(None, Quantity(1, ""))
    assert read_numbers_window("7") == Window(Quantity(7, ""), Quantity(7, ""))
    assert read_number("8.5") == 8.5


@pytest.mark.parametrize(("text", "fix"), [("8,5 to 9", "write 8.5 to 9"), ("9–10", "write 9 to 10")])
def test_numbers_are_mended(text: str, fix: str) -> None:
    with pytest.raises(UnitsError) as caught:
        read_numbers_window(text)
    assert caught.value.fix == fix


def test_tolerances() -> None:
    wanted = Tolerance(Quantity(0.9, "mm"), Quantity(0.05, "mm"))
    for text in ("0.90 +/- 0.05 mm", "0.90±0.05 mm", "0.90 mm +/- 0.05 mm", "0.90 +- 0.05 mm"):
        assert read_tolerance(text) == wanted
    assert read_tolerance("2 mm +/- 50 um").plus_minus == Quantity(50, "um")
    for text in ("45 +/- 2 degC", "45 degC +/- 2 K"):
        assert read_tolerance(text) == Tolerance(Quantity(45, "degC"), Quantity(2, "delta degC"))


@pytest.mark.parametrize(
    ("text", "message", "fix"),
    [
        ("5 mm", "`5 mm` gives no tolerance", "write it as 0.90 +/- 0.05 mm"),
        (
            "5 mm +/- 10 %",
            "`5 mm +/- 10 %` has a tolerance in % on a value in mm",
            "write the tolerance in mm",
        ),
        (
            "5 +/- -1 mm",
            "`5 +/- -1 mm` has a tolerance below nothing",
            "write the tolerance without a sign",
        ),
    ],
)
def test_tolerances_refused(text: str, message: str, fix: str) -> None:
    with pytest.raises(UnitsError) as caught:
        read_tolerance(text)
    assert (caught.value.message, caught.value.fix) == (message, fix)


def test_counts() -> None:
    for text, number, word in (
        ("4 points", 4, "points"),
        ("10 times", 10, "times"),
        ("30 boards", 30, "boards"),
    ):
        counted = read_counted(text)
        assert (counted.number, counted.word) == (number, word)
    for text in ("10 min", "0 times", "times", "1.5 times", "-2 times", "1" * 50 + " times"):
        with pytest.raises(UnitsError):
            read_counted(text)


def test_a_unit_alone() -> None:
    assert [read_unit(text) for text in ("dm2", "A h", "%", "mg", "°C")] == ["dm2", "A h", "%", "mg", "degC"]
    with pytest.raises(UnitsError) as caught:
        read_unit("dmm")
    assert caught.value.fix == "write mm"


def test_nearest_unit() -> None:
    assert [nearest_unit(text) for text in ("C", "Mins", "gm", "sqdm", "qqqq")] == [
        "degC",
        "min",
        "g",
        "dm2",
        None,
    ]


@pytest.mark.parametrize(
    "text", ["x" * 10**6, "8 " + "m" * 10**5, "1" * 10**5 + " min", "(" * 119, "1 " * 59]
)
def test_nonsense_is_refused_quickly(text: str) -> None:
    start = time.process_time()
    with pytest.raises(UnitsError) as caught:
        read_window(text)
    assert time.process_time() - start < 0.25
    assert len(caught.value.message) < 160


@given(st.text(max_size=130))
def test_any_text_is_read_or_refused(text: str) -> None:
    for read in (read_quantity, read_window, read_tolerance, read_counted, read_numbers_window, read_unit):
        try:
            read(text)
        except UnitsError as error:
            assert error.message and error.fix


NUMBERS = st.floats(-1e9, 1e9).filter(lambda x: x == 0 or abs(x) > 1e-12)
SYMBOLS = st.sampled_from([symbol for symbol in UNITS if symbol])


@given(NUMBERS, SYMBOLS)
def test_what_is_written_reads_back(number: float, unit: str) -> None:
    quantity = Quantity(number, unit)
    assert read_quantity(write_quantity(quantity)) == quantity


@given(st.integers(-(10**6), 10**6), st.integers(0, 4), SYMBOLS)
def test_what_is_shown_reads_back(figures: int, decimals: int, unit: str) -> None:
    if unit.startswith(("delta", "coulomb", "gal", "oz/gal")):
        return
    quantity = Quantity(figures / 10**decimals, unit, decimals)
    again = read_quantity(show_quantity(quantity))
    assert again == quantity
    assert again.decimals == decimals
