"""What somebody at a position needs: an own stop rule, whom to call, the look before, the worst first."""

import pytest

from generator.model.translation import is_sentence
from generator.views.card import CardStep, CardView
from generator.views.filling.step import step_view
from generator.views.filling.telling import telling
from tests.press.demo_cards import all_cards, facts, name, shown


def card(wanted: str) -> CardView:
    return next(card for card in all_cards() if name(card) == wanted)


def step(wanted: str, id: str) -> CardStep:
    return next(step for step in card(wanted).steps if step.id == id)


def test_a_visitor_is_told_a_visitors_stop_rule() -> None:
    seen = card("copper-the-holes/door-card")
    assert seen.stop_rule.startswith("Touch nothing.")
    assert seen.stop_rule != card("copper-the-holes/drill-card").stop_rule
    assert is_sentence("cards.door-card.stop_rule")


@pytest.mark.parametrize(
    ("wanted", "role"),
    [
        ("copper-the-holes/door-card", "Duty technician"),
        ("open-and-close-the-lab/close-card", "College safety office"),
        ("weekly-look-round/baths-card", "College safety office"),
        ("section-a-plated-hole/cut-card", "Duty technician"),
        ("spill-and-splash/splash-card", "College safety office"),
        ("reflow-a-small-board/door-warm-jar", "Duty technician"),
    ],
)
def test_the_role_that_the_stop_rule_names_is_the_one_to_call(wanted: str, role: str) -> None:
    [call] = [line.text for line in card(wanted).help if line.label == "CALL"]
    assert call.startswith(f"{role}: ")


def test_what_is_watched_has_an_answer_of_its_own() -> None:
    seen = step("reflow-a-small-board/reflow-card", "run")
    assert seen.watch.endswith("no smoke")
    assert seen.watch_if_not == "Elements off. Then CALL."
    assert seen.if_not == "Keep the board. Write the two readings on it. Then CALL."


def test_a_machine_is_looked_at_before_it_is_started() -> None:
    saw = step("section-a-plated-hole/cut-card", "saw-on")
    assert (saw.before, saw.before_if_not) == ("guard down, blade whole", "Do not start it. Then CALL.")
    assert step("reflow-a-small-board/reflow-card", "tray-in").before.startswith("tray level")
    # What a step of its own opens is looked at there; a spray is begun with a dripping part in the hand.
    assert step("copper-the-holes/coat-card", "fix").before == ""
    assert step("copper-the-holes/etch-card", "rinse-5").before == ""


def test_the_page_says_what_the_card_says_to_see_first() -> None:
    """A machine that is heated is looked at cold: its temperature is no part of that look."""
    checked = 0
    for study in shown().studies:
        told = telling(study, facts().formulas)
        steps = {str(one.id): one for one in study.procedure.steps}
        for seen in all_cards():
            if seen.procedure != study.procedure.id or seen.language != "en":
                continue
            for row in (row for row in seen.steps if row.before):
                view = step_view(told, steps[row.id])
                assert view.look.endswith(row.before), (name(seen), row.id)
                assert view.look_fail is not None
                checked += 1
                if view.verb != "Put in":
                    assert view.look == row.before, (name(seen), row.id)
    assert checked > 5


def test_the_gravest_hazard_stands_first_and_none_of_a_mixture_is_lost() -> None:
    for wanted in ("cast-a-block/pour-card", "copper-the-holes/door-card", "weekly-look-round/baths-card"):
        assert card(wanted).hazards[0].text == "Causes severe skin burns and eye damage"
    for wanted in ("cast-a-block/pour-card", "section-a-plated-hole/pot-card"):
        assert "Heats itself in the cup" in [hazard.text for hazard in card(wanted).hazards]
    made = [hazard.text for hazard in card("make-up-the-copper-bath/acid-card").hazards]
    assert "Very toxic to aquatic life with long lasting effects" in made


def test_only_what_is_thrown_away_goes_into_the_bag() -> None:
    assert step("copper-the-holes/copper-card", "unwear").container == "Solid waste bag: Nitrile gloves"
    assert step("copper-the-holes/coat-card", "fresh-gloves").container == "Solid waste bag"
    assert step("titrate-the-copper-bath/copper-card", "gauntlets-off").container == ""


def test_a_time_from_which_on_is_told_from_one_up_to_which() -> None:
    gel = step("cast-a-block/cure-card", "gel")
    assert (gel.limit, gel.not_before) == ("", "24\u00a0h after step 5")
    plated = step("copper-the-holes/copper-card", "copper-in")
    assert (plated.limit, plated.not_before) == ("up\u00a0to\u00a08\u00a0min after step 42", "")


def test_a_dial_is_named_where_its_unit_does_not_say_which() -> None:
    assert step("hand-over-a-machine/hand-over-card", "start-again").setting.startswith("spindle 40")
    assert step("cast-a-block/cure-card", "oven-in").setting == "60\u00a0°C"


def test_an_act_is_led_by_its_own_verb() -> None:
    assert step("section-a-plated-hole/grind-card", "coarse").verb == "GRIND"
    assert step("copper-the-holes/finish-card", "tell-keeper").verb == "WRITE"
