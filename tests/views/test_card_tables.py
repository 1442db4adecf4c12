"""The ready-reckoners of a wall card against the formulas worked by hand."""

import datetime
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from generator.pipeline import check
from generator.reading import open_folder, read_lab
from generator.study import Study
from generator.sums import Known
from generator.views.card import CardView
from generator.views.filling.card import CardFacts, card_view

ROOT = Path(__file__).parents[2]


@cache
def demo() -> Study:
    read = read_lab(open_folder(ROOT / "procedures", "procedures"))
    return check(read, datetime.date(2026, 11, 25)).studies["copper-the-holes"]


def facts() -> CardFacts:
    return CardFacts({formula.name: formula for formula in Known().all()}, "https://x.example/")


@cache
def view(id: str) -> CardView:
    card = next(card for card in demo().procedure.cards if card.id == id)
    return card_view(demo(), card, facts())


def test_the_current_is_density_times_all_the_area() -> None:
    """By hand: 1.9 A/dm2 x (area + 0.06 dm2), to one decimal."""
    table = view("copper-card").tables[0]
    assert table.step == "copper-in"
    areas = [float(head) for head in table.heads[1:]]
    assert areas == [1.5, 2.0, 2.5, 3.0, 3.5]
    assert [float(cell) for cell in table.rows[0][1:]] == [
        pytest.approx(1.9 * (area + 0.06), abs=0.05) for area in areas
    ]
    assert "Never above 12\u00a0A" in table.note
    assert "1.9\u00a0A/dm²" in table.note


def test_the_time_follows_the_law_of_faraday() -> None:
    """By hand: t = d rho z F / (M j eta), as in OpenStax Chemistry 2e, section 17.7; whole minutes."""
    table = view("copper-card").tables[1]
    for head, cell in zip(table.heads[1:], table.rows[0][1:], strict=True):
        metres, per_square_metre = float(head) * 1e-6, 190.0
        seconds = metres * 8960 * 2 * 96485.33212 / (0.063546 * per_square_metre * 0.97)
        assert float(cell) == pytest.approx(seconds / 60, abs=0.51)
    assert float(table.heads[1]) >= 15
    assert float(table.heads[-1]) <= 30


def test_nothing_above_the_supply_is_listed() -> None:
    study = demo()
    place = study.lab.places["copper"]  # type: ignore[index]
    assert place.power is not None and place.power.most is not None
    weak = place.model_copy(
        update={"power": place.power.model_copy(update={"most": replace(place.power.most, number=5.0)})}
    )
    lab = study.lab.model_copy(update={"places": {**study.lab.places, "copper": weak}})
    card = next(card for card in study.procedure.cards if card.id == "copper-card")
    table = card_view(replace(study, lab=lab), card, facts()).tables[0]
    assert max(float(cell) for cell in table.rows[0][1:]) <= 5.0
    assert "Never above 5\u00a0A" in table.note


def test_a_card_without_a_formula_has_no_table() -> None:
    assert view("etch-card").tables == ()


def test_a_spanish_card_joins_its_windows_in_spanish() -> None:
    steps = {step.id: step for step in view("etch-card-es").steps}
    assert "20\u00a0a\u00a028\u00a0°C" in steps["open-5"].check
    assert steps["rinse-5"].window_shown == "al\u00a0menos\u00a090\u00a0s"
    assert steps["etch-in"].window_shown == "30\u00a0a\u00a060\u00a0s"
    english = {step.id: step for step in view("etch-card").steps}
    assert english["rinse-5"].window_shown == "at\u00a0least\u00a090\u00a0s"
