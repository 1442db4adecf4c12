"""What a card says of clothes, of going back, of readings and of whom to call, from the demo lab."""

import pytest

from generator.units.showing import NO_BREAK
from generator.views.card import CardStep, CardView
from generator.views.saying import said
from tests.press.demo_cards import all_cards, name

ORDER = ("M004", "M013", "M003", "M010", "M026", "M008", "M009")


def card(wanted: str) -> CardView:
    return next(card for card in all_cards() if name(card) == wanted)


def step(wanted: str, id: str) -> CardStep:
    return next(step for step in card(wanted).steps if step.id == id)


def test_clothes_go_on_or_come_off_or_are_changed() -> None:
    assert step("copper-the-holes/clean-card", "wear-clean").verb == "PUT ON"
    assert step("copper-the-holes/coat-card", "fresh-gloves").verb == "CHANGE"
    assert step("anodise-a-coupon/seal-card", "change-wear").verb == "CHANGE"
    assert step("copper-the-holes/etch-card-es", "etch-wear").verb == "PÓNGASE"
    assert step("cast-a-block/cure-card", "hot-gloves-off").verb == "TAKE OFF"


def test_wear_is_listed_from_the_head_down() -> None:
    for seen in all_cards():
        places = [ORDER.index(piece.symbol) for piece in seen.wear if piece.symbol in ORDER]
        assert places == sorted(places), name(seen)


def test_what_only_comes_off_is_not_to_be_worn() -> None:
    worn = [piece.title for piece in card("anodise-a-coupon/seal-card").wear]
    assert "Face shield over goggles" not in worn
    assert worn[-2:] == ["Nitrile gloves", "Waterproof heat gauntlets"]


@pytest.mark.parametrize(
    ("verb", "sentence", "told"),
    [
        ("EMPTY", "Empty the tray.", ("EMPTY", "the tray.")),
        ("TAKE OUT", "Take the rack by its handle.", ("TAKE", "the rack by its handle.")),
        ("SWITCH OFF", "Switch off. Wait.", ("SWITCH OFF.", "Wait.")),
        ("PUT IN", "Lower the board in.", ("PUT IN", "Lower the board in.")),
        ("EMPTY", "Emptying takes a minute.", ("EMPTY", "Emptying takes a minute.")),
    ],
)
def test_a_verb_is_said_once(verb: str, sentence: str, told: tuple[str, str]) -> None:
    assert said(verb, sentence) == told


def test_going_back_is_told_from_doing_again() -> None:
    english = step("copper-the-holes/etch-card", "see-pink").if_not
    assert english.endswith("Go back to step 39, once. Then CALL.")
    spanish = step("copper-the-holes/etch-card-es", "see-pink").if_not
    assert spanish.endswith("Vuelva al paso 39, una vez. Después, LLAME.")
    said = step("copper-the-holes/clean-card", "see-dry").if_not.replace(NO_BREAK, " ")
    assert said == "Go back to step 21, 3 times at most. Then CALL."
    assert step("open-and-close-the-lab/close-card", "lids").if_not.endswith(
        "Do step 7 again, twice at most."
    )


def test_what_a_titration_finds_is_no_amount_to_add() -> None:
    seen = step("titrate-the-copper-bath/copper-card", "titrate-1")
    assert seen.amount_shown == ""
    assert seen.amounts == "EDTA solution 0.05 mol/L: read how much goes in, example 11.2\u00a0mL"


def test_a_card_in_spanish_says_its_hazards_in_spanish() -> None:
    texts = [hazard.text for hazard in card("copper-the-holes/etch-card-es").hazards]
    assert "Provoca quemaduras graves en la piel y lesiones oculares graves" in texts
    assert not [text for text in texts if "Causes" in text or "May cause" in text or "toxic to" in text]


def test_a_sum_is_shown_to_the_figures_that_it_means() -> None:
    seen = step("make-up-the-copper-bath/ready-card", "weigh-salt")
    assert seen.amounts.endswith("example 3024\u00a0g")


def test_whoever_is_called_can_be_reached() -> None:
    """A role alone is no use on a wall: each line says where the role is reached."""
    calls = [step.call for seen in all_cards() for step in seen.steps if step.call]
    assert calls
    assert all(": " in call for call in calls), calls
