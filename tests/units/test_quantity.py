"""Conversion, windows and what never mixes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.units import UNITS, DimensionError, Quantity, Tolerance, Window, read_window
from generator.units.dimension import CURRENT_DENSITY, LENGTH, NUMBER, TIME
from generator.units.pint_door import from_pint, from_pint_in, registry, to_pint


def test_si_values() -> None:
    assert Quantity(8, "min").si == 480
    assert Quantity(25, "degC").si == pytest.approx(298.15, rel=1e-15)
    assert Quantity(32, "degF").si == pytest.approx(273.15, rel=1e-15)
    assert Quantity(1.9, "A/dm2").si == 190
    assert Quantity(1, "delta degF").si == pytest.approx(5 / 9, rel=1e-15)


def test_to_another_unit() -> None:
    assert Quantity(90, "s").to("min") == Quantity(1.5, "min")
    assert Quantity(100, "degC").to("degF").number == pytest.approx(212, rel=1e-14)
    with pytest.raises(DimensionError, match=r"a time \(min\) is no length \(mm\)"):
        Quantity(8, "min").to("mm")


@pytest.mark.parametrize(
    ("one", "other"), [("HRC", "ShoreD"), ("HRC", "%"), ("parts", "%"), ("degC", "delta degC")]
)
def test_what_never_mixes(one: str, other: str) -> None:
    with pytest.raises(DimensionError):
        Quantity(1, one).to(other)


@given(st.floats(-1e6, 1e6), st.sampled_from(list(UNITS.values())))
def test_there_and_back(number: float, unit: object) -> None:
    quantity = Quantity(number, unit.symbol)  # type: ignore[attr-defined]
    for other in UNITS.values():
        if other.dimension == quantity.dimension:
            back = quantity.to(other.symbol).to(quantity.unit)
            assert back.number == pytest.approx(number, rel=1e-11, abs=1e-9)


def test_windows_contain() -> None:
    window = read_window("6 to 10 min")
    assert window.contains(Quantity(6, "min"))
    assert window.contains(Quantity(600, "s"))
    assert not window.contains(Quantity(601, "s"))
    assert window.contains(read_window("7 to 8 min"))
    assert not window.contains(read_window("up to 8 min"))
    assert read_window("up to 10 min").contains(read_window("up to 8 min"))
    assert not read_window("at least 10 min").contains(read_window("up to 8 min"))
    assert window.width == Quantity(4, "min")
    assert read_window("0.8 to 2.4 mm").width == Quantity(1.6, "mm")
    assert read_window("20 to 28 degC").width == Quantity(8, "delta degC")
    assert read_window("up to 8 min").width is None
    assert window.dimension == TIME
    with pytest.raises(DimensionError):
        window.contains(Quantity(8, "mm"))


def test_an_edge_in_another_unit_is_inside() -> None:
    assert read_window("up to 0.1 mm").contains(Quantity(100, "um"))
    assert read_window("at least 0.1 mm").contains(Quantity(100, "um"))
    assert read_window("up to 3 days").contains(Quantity(72, "h"))


def test_nonsense_windows_are_bugs() -> None:
    with pytest.raises(ValueError, match="low or a high"):
        Window(None, None)
    with pytest.raises(DimensionError):
        Window(Quantity(1, "min"), Quantity(1, "mm"))
    with pytest.raises(DimensionError):
        Tolerance(Quantity(1, "min"), Quantity(1, "mm"))


def test_a_tolerance_is_a_window() -> None:
    window = Tolerance(Quantity(45, "degC"), Quantity(2, "delta degC")).window
    assert window == read_window("43 to 47 degC")


def test_dimension_names() -> None:
    assert str(CURRENT_DENSITY) == "current density"
    assert str(LENGTH**4) == "m4"
    assert str(LENGTH / (TIME * TIME)) == "m/s2"
    assert str(NUMBER / (LENGTH * TIME)) == "1/(s m)"


def test_through_the_pint_door() -> None:
    current = to_pint(Quantity(1.9, "A/dm2")) * to_pint(Quantity(2.63, "dm2"))
    assert from_pint(current, "A").number == pytest.approx(4.997, rel=1e-12)
    assert from_pint(registry().Quantity(77, "degF"), "degC").number == pytest.approx(25, rel=1e-12)
    with pytest.raises(DimensionError):
        from_pint(current, "min")
    with pytest.raises(DimensionError):
        to_pint(Quantity(60, "HRC"))
    assert from_pint_in(to_pint(Quantity(0.3, "mil")), ("um", "mil")) == Quantity(0.3, "mil")
    assert from_pint_in(to_pint(Quantity(1, "kA")), ("A", "mA")).to("A").number == pytest.approx(1000)
    with pytest.raises(DimensionError):
        from_pint_in(current, ("min", "boards"))
