"""Rules that the press calls: their words, from plain data."""

from generator.checks.sums import card_drops_hazard, card_too_small
from generator.model import Card
from generator.problems import Level

CARD = Card.model_validate({"id": "line-card", "title": "Line card", "size": "A4", "read_from": "2.0 m"})


def test_a_card_that_needs_more_lines_is_told_how_to_split() -> None:
    parts = (card_too_small.Part("1", "9", ("Clean",)), card_too_small.Part("10", "18"))
    (problem,) = card_too_small.judge(CARD, 61, 40, 6.7, parts, ("A3",))
    assert (problem.rule, problem.level) == ("card-too-small", Level.ERROR)
    assert problem.message.replace("\u00a0", " ") == (
        'card "line-card" needs 61 lines and has room for 40, '
        "with letters of 6.7 mm for a reader at 2.0 m on A4"
    )
    assert problem.fix == (
        "split it into 2 cards (steps 1 to 9 of Clean; steps 10 to 18)"
        " or print it on A3 or have it read from nearer"
    )


def test_a_stage_that_is_cut_becomes_two_stages() -> None:
    parts = (card_too_small.Part("1", "9", ("Clean",), 5.2), card_too_small.Part("10", "18", ("Clean",), 5.5))
    (problem,) = card_too_small.judge(CARD, 61, 40, 5.0, parts)
    assert problem.fix == (
        "split it into 2 cards (steps 1 to 9 of Clean with letters of 5.2 mm; steps 10 to 18 of Clean with "
        "letters of 5.5 mm), each of them a stage of its own or have it read from nearer"
    )


def test_a_card_that_no_split_helps() -> None:
    (problem,) = card_too_small.judge(CARD, 61, 40, 6.7)
    assert problem.fix == "give it fewer steps, or have it read from nearer"


def test_without_a_split_the_distance_that_fits_is_said() -> None:
    (problem,) = card_too_small.judge(CARD, 61, 40, 6.7, (), ("A3",), 1400.0)
    assert problem.fix == "print it on A3 or have it read from 1.4 m, where it would fit"
    (problem,) = card_too_small.judge(CARD, 61, 40, 6.7, (), (), 0.0)
    assert problem.fix == "give it fewer steps, or say them in fewer words"


def test_a_card_that_fits_to_the_line() -> None:
    assert list(card_too_small.judge(CARD, 40, 40, 6.7)) == []


def test_what_a_card_leaves_out_is_told_once_with_its_first_step() -> None:
    hazards = {"in": {"Corrosive"}, "out": {"Corrosive"}, "look": set[str]()}
    wear = {"in": {"Gloves", "Apron"}, "out": {"Gloves"}}
    found = list(card_drops_hazard.judge(CARD, set(), {"Gloves"}, hazards, wear))
    assert [(problem.step, problem.message) for problem in found] == [
        ("in", 'card "line-card" leaves out hazards of 2 steps, first in: Corrosive'),
        ("in", 'card "line-card" leaves out wear of step in: Apron'),
    ]


def test_a_card_that_shows_more_than_its_steps_have() -> None:
    shown = {"Corrosive", "Toxic"}
    assert list(card_drops_hazard.judge(CARD, shown, set(), {"in": {"Toxic"}}, {"in": set()})) == []
