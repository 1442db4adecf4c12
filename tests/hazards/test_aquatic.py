"""Hazard to life in water."""

import pytest

from generator.hazards import Ingredient, read_class
from generator.hazards.aquatic import screen_aquatic
from generator.hazards.steps import Finding, Part
from generator.units import Quantity


def stuff(percent: float, *classes: str, m: float | None = 1.0) -> Part:
    kinds = tuple(read_class(text) for text in classes)
    one = Ingredient("stuff", Quantity(percent, "% w/w"), kinds, m_acute=m, m_chronic=m)
    return Part(one, percent)


def codes(*parts: Part) -> list[str]:
    return [one.code for one in screen_aquatic(parts).classes]


def sums(found: Finding, kind: str) -> list[float]:
    return [round(step.total, 6) for step in found.steps if step.rule.startswith(kind)]


def test_un_example_4_1a() -> None:
    """UN 2012/25 (read): acute sums 0.1, 2, 20: none; chronic 0.1, 2, 20, 26.01: Chronic 4."""
    found = screen_aquatic(
        (
            stuff(0.01, "Aquatic Acute 1 H400", "Aquatic Chronic 1 H410", m=10),
            stuff(1.0, "Aquatic Acute 2 H401", "Aquatic Chronic 2 H411"),
            stuff(25.0, "Aquatic Chronic 4 H413"),
            stuff(73.99),
        )
    )
    assert sums(found, "Aquatic Acute") == [0.1, 2.0, 20.0]
    assert sums(found, "Aquatic Chronic") == [0.1, 2.0, 20.0, 26.01]
    assert [one.name for one in found.classes] == ["Aquatic Chronic 4"]


# The 25 % rules, read for ADR 2.2.9.1.10.4.6.
@pytest.mark.parametrize(
    ("part", "expected"),
    [
        (stuff(25, "Aquatic Acute 1 H400"), ["H400"]),
        (stuff(24.9, "Aquatic Acute 1 H400"), ["H401"]),
        (stuff(2.5, "Aquatic Acute 1 H400", m=10), ["H400"]),
        (stuff(25, "Aquatic Chronic 1 H410"), ["H410"]),
        (stuff(2.5, "Aquatic Chronic 1 H410"), ["H411"]),
        (stuff(0.25, "Aquatic Chronic 1 H410"), ["H412"]),
        (stuff(0.24, "Aquatic Chronic 1 H410"), []),
        (stuff(25, "Aquatic Chronic 2 H411"), ["H411"]),
        (stuff(2.5, "Aquatic Chronic 2 H411"), ["H412"]),
        (stuff(2.4, "Aquatic Chronic 2 H411"), []),
        (stuff(25, "Aquatic Chronic 3 H412"), ["H412"]),
        (stuff(25, "Aquatic Chronic 4 H413"), ["H413"]),
    ],
)
def test_each_rule(part: Part, expected: list[str]) -> None:
    assert codes(part) == expected


def test_chronic_4_is_a_plain_sum() -> None:
    found = screen_aquatic((stuff(0.2, "Aquatic Chronic 1 H410"), stuff(24.8, "Aquatic Chronic 4 H413")))
    assert [one.code for one in found.classes] == ["H413"]


def test_what_is_too_little_to_count() -> None:
    """4.1.3.1 (read): from 0.1 % (0.1/M with M above 1) for category 1, otherwise from 1 %."""
    assert screen_aquatic((stuff(0.09, "Aquatic Chronic 1 H410"),)).steps == ()
    assert screen_aquatic((stuff(0.09, "Aquatic Chronic 1 H410", m=10),)).steps != ()
    assert screen_aquatic((stuff(0.9, "Aquatic Chronic 2 H411"),)).steps == ()


def test_an_unknown_m_factor_is_said() -> None:
    found = screen_aquatic((stuff(30, "Aquatic Acute 1 H400", m=None),))
    assert [one.code for one in found.classes] == ["H400"]
    assert "M-factor" in found.unknown[0].why
