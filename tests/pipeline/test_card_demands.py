"""What a card must show, read a second time: each thing taken away from a demo card is missed."""

import datetime
from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from generator.checks.sums import card_drops_hazard
from generator.model import Card
from generator.pipeline import check
from generator.pipeline.card_demands import demanded, shown
from generator.reading import open_folder, read_lab
from generator.study import Study
from generator.sums import Known
from generator.views.card import CardStep, CardView
from generator.views.filling.card import CardFacts, card_view

ROOT = Path(__file__).parents[2]


@cache
def studies() -> dict[str, Study]:
    read = read_lab(open_folder(ROOT / "procedures", "procedures"))
    return dict(check(read, datetime.date(2026, 11, 25)).studies)


def card_of(id: str) -> Card:
    return next(card for card in studies()["copper-the-holes"].procedure.cards if card.id == id)


@cache
def view(id: str) -> CardView:
    facts = CardFacts({formula.name: formula for formula in Known().all()}, "https://x.example/")
    return card_view(studies()["copper-the-holes"], card_of(id), facts)


def left_out(card: Card, seen: CardView) -> list[tuple[str, str]]:
    wanted = demanded(studies()["copper-the-holes"], card)
    there = shown(seen)
    problems = [
        problem
        for kind, things in wanted.items()
        for problem in card_drops_hazard.left_out(card, kind, there[kind], things)
    ]
    return [(problem.step, problem.message) for problem in problems]


def changed(seen: CardView, id: str, change: Callable[[CardStep], CardStep]) -> CardView:
    return replace(seen, steps=tuple(change(step) if step.id == id else step for step in seen.steps))


@pytest.mark.parametrize(
    "id", ["drill-card", "clean-card", "coat-card", "etch-card", "etch-card-es", "copper-card"]
)
def test_a_full_card_leaves_nothing_out(id: str) -> None:
    assert left_out(card_of(id), view(id)) == []


def test_every_card_of_every_demo_procedure_is_full() -> None:
    facts = CardFacts({formula.name: formula for formula in Known().all()}, "https://x.example/")
    for study in studies().values():
        for card in study.procedure.cards:
            there, wanted = shown(card_view(study, card, facts)), demanded(study, card)
            for kind, things in wanted.items():
                assert not list(card_drops_hazard.left_out(card, kind, there[kind], things)), card.id


def test_a_piece_of_wear() -> None:
    seen = view("etch-card")
    ((step, message),) = left_out(card_of("etch-card"), replace(seen, wear=seen.wear[:-1]))
    assert "leaves out wear of " in message
    assert message.endswith("Long chemical gauntlets over nitrile")
    assert step


def test_a_hazard() -> None:
    seen = view("etch-card")
    (found,) = left_out(card_of("etch-card"), replace(seen, hazards=seen.hazards[1:]))
    assert "leaves out hazards" in found[1]
    assert "Causes severe skin burns and eye damage" in found[1]


def test_a_hazard_without_a_statement() -> None:
    (found,) = left_out(card_of("coat-card"), replace(view("coat-card"), hazards=()))
    assert "Hot surface" in found[1]


def test_the_stop_rule() -> None:
    (found,) = left_out(card_of("etch-card"), replace(view("etch-card"), stop_rule=""))
    assert "leaves out the stop rule" in found[1]


def test_a_hold_point() -> None:
    seen = changed(view("etch-card"), "buddy-here", lambda step: replace(step, hold=""))
    assert left_out(card_of("etch-card"), seen) == [
        ("buddy-here", 'card "etch-card" leaves out the hold point of step buddy-here: buddy says READY')
    ]


def test_current_first() -> None:
    seen = changed(view("copper-card"), "copper-in", lambda step: replace(step, marks=()))
    (found,) = left_out(card_of("copper-card"), seen)
    assert found[0] == "copper-in"
    assert "current-first" in found[1]


def test_what_the_alarm_asks() -> None:
    seen = changed(view("copper-card"), "copper-in", lambda step: replace(step, alarm="Lift."))
    (found,) = left_out(card_of("copper-card"), seen)
    assert "Current to zero FIRST" in found[1]


def test_the_amount_of_a_chemical() -> None:
    study = studies()["cast-a-block"]
    card = next(card for card in study.procedure.cards if card.id == "weigh-card")
    facts = CardFacts({formula.name: formula for formula in Known().all()}, "https://x.example/")
    whole = card_view(study, card, facts)
    kind = "the amount"
    for id, name, seen in (
        ("weigh-a", "resin-a", changed(whole, "weigh-a", lambda step: replace(step, amount_shown=""))),
        ("weigh-b", "hardener-b", changed(whole, "weigh-b", lambda step: replace(step, amounts=""))),
    ):
        (problem,) = card_drops_hazard.left_out(card, kind, shown(seen)[kind], demanded(study, card)[kind])
        title = study.lab.substances[name].title  # type: ignore[index]
        assert problem.message == f'card "weigh-card" leaves out the amount of step {id}: {title}'


def test_an_amount_that_is_worked_out_is_an_example_and_never_large() -> None:
    """The wall keeps an old number; the dose of the day stands on the page (common practice, no source)."""
    study = studies()["titrate-the-copper-bath"]
    card = next(card for card in study.procedure.cards if card.id == "correct-card")
    facts = CardFacts({formula.name: formula for formula in Known().all()}, "https://x.example/")
    steps = [step for step in card_view(study, card, facts).steps if step.amounts]
    assert [step.amount_shown for step in steps] == ["", ""]
    assert all("work it out on the page, example " in step.amounts for step in steps)


def test_extraction() -> None:
    seen = changed(view("etch-card"), "open-5", lambda step: replace(step, extraction=""))
    (found,) = left_out(card_of("etch-card"), seen)
    assert "leaves out the extraction" in found[1]
    assert found[1].endswith("side slot on, paper strip drawn in")


def test_a_step() -> None:
    seen = view("copper-card")
    kept = tuple(step for step in seen.steps if step.id != "power-down")
    found = left_out(card_of("copper-card"), replace(seen, steps=kept))
    assert [step for step, _ in found] == ["power-down"]


def test_a_check_and_what_to_do_if_not() -> None:
    seen = changed(view("etch-card"), "see-pink", lambda step: replace(step, check=""))
    (found,) = left_out(card_of("etch-card"), seen)
    assert "leaves out what must be seen" in found[1]


def test_a_translated_card_is_read_in_its_language() -> None:
    seen = changed(view("etch-card-es"), "buddy-here", lambda step: replace(step, hold=""))
    (found,) = left_out(card_of("etch-card-es"), seen)
    assert "el compañero dice LISTO" in found[1]
