"""What a composition implies beside what is declared; statements dropped on the way from bottle to bath."""

import pytest

from generator.hazards import (
    Composition,
    Ingredient,
    NotScreened,
    Screening,
    cut_off,
    declared_ingredient,
    dropped_statements,
    read_class,
    read_limit,
    screen,
    undeclared_classes,
)
from generator.units import Quantity, read_quantity

WATER = declared_ingredient("water", None, (), cas="7732-18-5")


def stuff(percent: float, *hazards: str) -> Ingredient:
    return declared_ingredient("stuff", Quantity(percent, "% w/w"), hazards)


def dropped(one: Ingredient, *declared: str) -> list[str]:
    found = dropped_statements(Composition("bath", (one, WATER)), declared)
    assert not isinstance(found, NotScreened)
    return [row.code for row in found]


def undeclared(one: Ingredient, *declared: str) -> list[str]:
    found = screen(Composition("bath", (one, WATER)))
    assert isinstance(found, Screening)
    return [row.code for row in undeclared_classes(found, declared)]


def test_dropped_and_covered() -> None:
    assert dropped(stuff(10, "H317"), "H314") == ["H317"]
    assert dropped(stuff(10, "H317"), "H317") == []
    assert dropped(stuff(10, "H319"), "H314") == []
    assert dropped(stuff(0.9, "H317")) == []


@pytest.mark.parametrize("code", ["H272", "H290", "H225"])
def test_tested_classes_are_left_out(code: str) -> None:
    assert dropped(stuff(90, code)) == []
    assert undeclared(stuff(90, code)) == []


def one(text: str, *limits: str, m: float | None = None) -> Ingredient:
    kind = read_class(text)
    own = tuple(read_limit(limit) for limit in limits)
    return Ingredient("stuff", read_quantity("1 % w/w"), (kind,), own, m_acute=m, m_chronic=m)


# Acute: 100 x converted point / category limit; oral 4: 100 x 500/2000 = 25 %, 3: 100 x 100/300 = 33.3 %.
@pytest.mark.parametrize(
    ("ingredient", "expected"),
    [
        (one("Acute Tox. 4 H302"), 25),
        (one("Acute Tox. 3 H301"), 100 / 3),
        (one("Acute Tox. 4 H312"), 55),
        (one("Acute Tox. 4 H332"), 30),
        (one("Skin Corr. 1B H314"), 5),
        (one("Skin Corr. 1B H314", "Skin Corr. 1B H314: C >= 25"), 25),
        (one("Skin Irrit. 2 H315"), 10),
        (one("Eye Dam. 1 H318"), 3),
        (one("Eye Irrit. 2 H319"), 10),
        (one("STOT SE 3 H335"), 20),
        (one("Carc. 1A H350"), 0.1),
        (one("Skin Sens. 1 H317", "Skin Sens. 1 H317: C >= 0.01"), 0.01),
        (one("Asp. Tox. 1 H304"), 10),
        (one("Aquatic Acute 1 H400", m=10), 2.5),
        (one("Aquatic Chronic 2 H411"), 25),
        (one("Ox. Sol. 3 H272"), None),
    ],
)
def test_cut_offs(ingredient: Ingredient, expected: float | None) -> None:
    found = cut_off(ingredient, (ingredient.classes or ())[0])
    assert found is None if expected is None else found == pytest.approx(expected)


def test_undeclared() -> None:
    assert undeclared(stuff(10, "H318")) == ["H318"]
    assert undeclared(stuff(10, "H318"), "H314") == []
    assert undeclared(stuff(2, "H318"), "H318") == []
    assert undeclared(stuff(2, "H318")) == ["H319"]


def test_without_shares_there_is_nothing_to_compare() -> None:
    vague = declared_ingredient("vague", read_quantity("5 %"), ("H314",))
    assert isinstance(dropped_statements(Composition("bath", (vague, WATER)), ()), NotScreened)
