"""Acute toxicity against the worked examples of the United Nations."""

import pytest

from generator.hazards import Ate, Ingredient, classes_of, read_class
from generator.hazards.acute import screen_acute
from generator.hazards.composition import Route
from generator.hazards.limit_table import acute_table
from generator.hazards.steps import Part
from generator.units import Quantity

# UN ST/SG/AC.10/C.4/2008/23 annex 2 (read on document-sharing copies); ingredients in % with their estimate.
EXAMPLE_1A = ((16, 1600), (4, 200), (80, 3450))
EXAMPLE_1C = ((4, 1737),)
EXAMPLE_1D_ORAL = ((26, 2737), (23, 4500), (40, 400))
EXAMPLE_1D_VAPOUR = ((26, 11), (23, 19), (40, 4))


def part(percent: float, one: Ingredient) -> Part:
    return Part(one, percent)


def with_ate(route: Route, rows: tuple[tuple[float, float], ...]) -> tuple[Part, ...]:
    amount = Quantity(1, "% w/w")
    return tuple(
        part(percent, Ingredient(f"ingredient {at}", amount, ate=(Ate(route, value),)))
        for at, (percent, value) in enumerate(rows, start=1)
    )


def ignored(percent: float) -> Part:
    return part(percent, Ingredient("harmless", Quantity(percent, "% w/w")))


def unknown(percent: float) -> Part:
    return part(percent, Ingredient("mystery", Quantity(percent, "% w/w"), None))


def estimate(parts: tuple[Part, ...], at: int = 0) -> float:
    step = screen_acute(parts).steps[at]
    return float(step.outcome.split(" = ")[1].split()[0])


def test_example_3_1a() -> None:
    parts = with_ate("oral", EXAMPLE_1A)
    found = screen_acute(parts)
    assert estimate(parts) == pytest.approx(1880, abs=0.5)
    assert [one.name for one in found.classes] == ["Acute Tox. 4"]
    assert [one.code for one in found.classes] == ["H302"]


def test_example_3_1c_is_not_classified() -> None:
    parts = (*with_ate("oral", EXAMPLE_1C), ignored(5), ignored(5), ignored(86))
    assert 100 / (4 / 1737) == 43425
    assert estimate(parts) == pytest.approx(43425, rel=1e-3)
    assert screen_acute(parts).classes == ()


def test_example_3_1d_by_mouth() -> None:
    parts = with_ate("oral", EXAMPLE_1D_ORAL)
    assert estimate(parts) == pytest.approx(873, abs=1)
    assert [one.code for one in screen_acute(parts).classes] == ["H302"]


def test_example_3_1d_vapour_takes_the_unknown_off_the_numerator() -> None:
    """(100 - 11) / (26/11 + 23/19 + 40/4) = 6.557, category 3, "11 % ... unknown"."""
    parts = (*with_ate("vapour", EXAMPLE_1D_VAPOUR), unknown(11))
    found = screen_acute(parts)
    assert estimate(parts) == pytest.approx(6.557, abs=0.001)
    assert [one.code for one in found.classes] == ["H331"]
    assert any("11 % of the mixture" in one.why and "vapour" in one.why for one in found.unknown)
    assert found.steps[0].clause == "3.1.3.6.2.3"


def test_ten_percent_unknown_keeps_the_plain_formula() -> None:
    parts = (*with_ate("oral", ((50, 500),)), unknown(10))
    assert estimate(parts) == pytest.approx(1000)
    assert screen_acute(parts).unknown
    more = (*with_ate("oral", ((50, 500),)), unknown(10.1))
    assert estimate(more) == pytest.approx(899)


def test_what_nobody_named_is_unknown_too() -> None:
    found = screen_acute(with_ate("oral", ((50, 500),)), unnamed=50)
    assert found.steps[0].outcome.startswith("50 ÷ 0.1 = 500 mg/kg")


# Table 3.1.2. Dermal 5/50/300/1100: a public tutorial prints the category limits 50/200/1000/2000, an error.
@pytest.mark.parametrize(
    ("route", "points"),
    [
        ("oral", (0.5, 5, 100, 500)),
        ("dermal", (5, 50, 300, 1100)),
        ("gas", (10, 100, 700, 4500)),
        ("vapour", (0.05, 0.5, 3, 11)),
        ("mist", (0.005, 0.05, 0.5, 1.5)),
    ],
)
def test_converted_points_are_not_the_limits(route: str, points: tuple[float, ...]) -> None:
    table = acute_table(route)
    assert table.points == points
    assert all(point < limit for point, limit in zip(table.points, table.limits, strict=True))


# Table 3.1.1: a limit belongs to its category ("up to").
@pytest.mark.parametrize(
    ("value", "code"),
    [(5, "H300"), (50, "H300"), (50.1, "H301"), (300, "H301"), (2000, "H302"), (2001, "")],
)
def test_edges_of_the_categories(value: float, code: str) -> None:
    found = screen_acute(with_ate("oral", ((100, value),)))
    assert [one.code for one in found.classes] == ([code] if code else [])


# C = 100 x 2.65 / limit with limits 20 and 10 mg/L; a trade body prints 13 and 26 % for nitric acid.
@pytest.mark.parametrize(("percent", "code"), [(13.2, ""), (13.25, "H332"), (26.4, "H332"), (26.5, "H331")])
def test_nitric_acid_bands(percent: float, code: str) -> None:
    found = screen_acute(with_ate("vapour", ((percent, 2.65),)))
    assert [one.code for one in found.classes] == ([code] if code else [])


def classed(percent: float, text: str) -> Part:
    return part(percent, Ingredient("stuff", Quantity(percent, "% w/w"), (read_class(text),)))


def test_relevance_depends_on_the_category() -> None:
    """Table 1.1 of CLP: 0.1 % for categories 1 to 3, 1 % for category 4."""
    assert screen_acute((classed(0.99, "Acute Tox. 4 H302"),)).steps == ()
    assert screen_acute((classed(0.5, "Acute Tox. 3 H301"),)).steps != ()
    assert screen_acute((classed(0.09, "Acute Tox. 3 H301"),)).steps == ()


def test_a_statement_that_leaves_the_category_open_is_taken_as_the_graver() -> None:
    one = Ingredient("poison", Quantity(1, "% w/w"), classes_of(("H300",)))
    found = screen_acute((part(1, one),))
    assert [row.code for row in found.classes] == ["H300"]
    assert any("graver" in row.why for row in found.unknown)


def test_an_inhalation_statement_without_form_counts_as_vapour_and_as_mist() -> None:
    found = screen_acute((classed(50, "Acute Tox. 3 H331"),))
    assert [step.rule for step in found.steps] == [
        "Acute toxicity breathed in as vapour",
        "Acute toxicity breathed in as dust or mist",
    ]
