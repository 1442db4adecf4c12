"""The table's factors against pint's, and what every row must have."""

from fractions import Fraction
from typing import Any

import pytest

from generator.units import UNITS, Unit, find_unit
from generator.units.pint_door import pint_name

# Hardness, parts and pieces are scales of the trade, not units of a system.
KNOWN_TO_PINT = [s for s, u in UNITS.items() if u.dimension.kind in ("", "temperature difference")]


@pytest.fixture(scope="module")
def exact() -> Any:
    """Pint with exact fractions, so that its own factors are seen without rounding."""
    import pint

    return pint.UnitRegistry(non_int_type=Fraction)


@pytest.mark.parametrize("symbol", KNOWN_TO_PINT)
def test_factor_equals_pint(exact: Any, symbol: str) -> None:
    unit = UNITS[symbol]
    name = pint_name(symbol)
    if unit.offset:
        for number in (0, 25, 212):
            kelvin = exact.Quantity(Fraction(number), name).to("kelvin").magnitude
            assert (number + unit.offset) * unit.factor == kelvin
        return
    assert exact.Quantity(Fraction(1), name).to_base_units() == exact.Quantity(unit.factor, _si_base(unit))


def _si_base(unit: Unit) -> str:
    """Coherent SI base units for pint, whose own base may hold the gram."""
    names = ("second", "meter", "kilogram", "kelvin", "ampere", "mole")
    powers = (f"{name}**{n}" for name, n in zip(names, unit.dimension.powers, strict=True) if n)
    return "*".join(powers) or "dimensionless"


@pytest.mark.parametrize("symbol", KNOWN_TO_PINT)
def test_dimension_equals_pint(exact: Any, symbol: str) -> None:
    names = ("[time]", "[length]", "[mass]", "[temperature]", "[current]", "[substance]")
    theirs = exact.Unit(pint_name(symbol)).dimensionality
    assert UNITS[symbol].dimension.powers == tuple(int(theirs.get(name, 0)) for name in names)


def test_factors_are_exact_as_doubles() -> None:
    for unit in UNITS.values():
        assert Fraction(unit.numerator) == unit.factor.numerator
        assert Fraction(unit.denominator) == unit.factor.denominator


def test_every_symbol_and_spelling_reads_as_its_own_unit() -> None:
    for unit in UNITS.values():
        for text in (unit.symbol, *unit.spellings):
            if text:
                assert find_unit(text) == unit.symbol, text


def test_every_shown_unit_reads_back_unless_a_thermometer_or_the_coulomb() -> None:
    for unit in UNITS.values():
        if unit.symbol.startswith(("coulomb", "delta", "gal", "oz/gal")) or not unit.symbol:
            continue
        assert find_unit(unit.shown) == unit.symbol, unit.shown
        assert find_unit(unit.plural) == unit.symbol, unit.plural


def test_no_spelling_stands_twice() -> None:
    seen: dict[str, str] = {}
    for unit in UNITS.values():
        for text in (unit.symbol, *unit.spellings):
            assert seen.setdefault(text, unit.symbol) == unit.symbol, text
