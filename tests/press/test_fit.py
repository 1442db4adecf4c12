"""The largest letters that fit; a card that does not fit is refused with a split that does."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from generator.outputs.press import card_pdf, fit, part_of
from generator.outputs.press.fitting import setting
from generator.outputs.press.plans import Shared, Way, plan
from generator.problems import NewelError
from generator.views.card import CardView
from tests.press import samples


@pytest.mark.parametrize("make", [samples.drill_card, samples.etch_card, samples.copper_card])
def test_one_notch_larger_does_not_fit(make: Callable[[], CardView]) -> None:
    card = make()
    made = setting(card).plan
    way = Way(made.paper, made.count, made.around.rail > 0, made.density)
    assert plan(Shared(card), way, made.letters.text).fits
    assert not plan(Shared(card), way, made.letters.text + 0.05).fits


def test_the_demo_cards_fit_at_their_distance() -> None:
    for make in (samples.drill_card, samples.etch_card, samples.copper_card, samples.door_card):
        found = fit(make())
        assert found.fits
        assert found.letter_height >= found.least
        assert found.lines_needed <= found.lines_there + 2
        assert not found.proposal


def test_fewer_words_get_larger_letters() -> None:
    card = samples.etch_card()
    short = replace(card, steps=card.steps[:4])
    assert fit(short).letter_height > fit(card).letter_height * 1.1


def test_a_card_with_too_much_is_refused_by_stage() -> None:
    found = fit(samples.whole_card())
    assert not found.fits
    assert found.letter_height == found.least
    assert found.lines_needed > found.lines_there
    assert [part.stages for part in found.proposal] == [("Receive",), ("Micro-etch",), ("Plate",)]
    assert [(part.first, part.last) for part in found.proposal] == [("1", "7"), ("33", "42"), ("43", "52")]
    assert all(part.letter_height >= found.least for part in found.proposal)


def test_one_stage_is_split_between_places_and_nothing_is_lost() -> None:
    card = samples.spanish_card()
    found = fit(card)
    assert not found.fits
    assert [id for part in found.proposal for id in part.steps] == [step.id for step in card.steps]
    assert len(found.proposal) == 2
    for number, part in enumerate(found.proposal, start=1):
        smaller = part_of(card, part.steps, number, 2)
        assert fit(smaller).letter_height == part.letter_height
        assert smaller.wear == card.wear
        assert smaller.title.endswith(f"{number}/2")
    boundary = len(found.proposal[0].steps)
    before, after = card.steps[boundary - 1], card.steps[boundary]
    assert before.place_title != after.place_title


def test_a_table_stays_with_its_step() -> None:
    card = samples.copper_card()
    assert part_of(card, ("copper-in",), 1, 2).tables == card.tables
    assert part_of(card, ("close-6",), 2, 2).tables == ()


def test_a_step_that_fits_no_sheet_has_no_proposal() -> None:
    card = samples.etch_card()
    endless = replace(card.steps[0], sentence="Read the slip again. " * 120)
    found = fit(replace(card, steps=(endless,)))
    assert not found.fits
    assert found.proposal == ()


def test_a_larger_sheet_is_named() -> None:
    found = fit(replace(samples.etch_card(), size="A4", read_from=1500.0))
    assert not found.fits
    assert "A3" in dict(found.larger)


def test_without_a_split_the_nearest_distance_that_fits_is_named() -> None:
    card = samples.etch_card()
    one = replace(
        card, steps=(replace(card.steps[0], sentence="Read the slip again. " * 20),), read_from=6000.0
    )
    found = fit(one)
    assert not found.fits
    assert found.proposal == ()
    assert found.nearer
    assert 600.0 <= found.nearer < 6000.0
    assert fit(replace(one, read_from=found.nearer)).fits
    assert not fit(replace(one, read_from=found.nearer + 100.0)).fits


def test_where_no_distance_helps_none_is_named() -> None:
    card = samples.etch_card()
    endless = replace(card.steps[0], sentence="Read the slip again. " * 4000)
    assert fit(replace(card, steps=(endless,))).nearer == 0.0
    assert fit(samples.spanish_card()).nearer is None


def test_the_press_never_shrinks() -> None:
    with pytest.raises(NewelError) as caught:
        card_pdf(samples.spanish_card())
    assert caught.value.id == "card-too-small"
    assert "5.0 mm on A3" in str(caught.value)


def test_an_unknown_size_names_the_known_ones() -> None:
    with pytest.raises(NewelError) as caught:
        fit(replace(samples.etch_card(), size="A5"))
    assert "A4, A3, Letter, Tabloid" in caught.value.hint


def test_a_draft_that_fits_can_be_posted() -> None:
    """A draft keeps the room of the issue, check code and date that it will carry."""
    draft = replace(samples.drill_card(), status="draft", issue="", check_code="", good_until="")
    posted = replace(draft, status="posted", issue="12", check_code="7F3K-Q2MX", good_until="2027-11-25")
    assert fit(draft).letter_height <= fit(posted).letter_height


def test_a_place_where_one_thing_is_done_takes_no_line_of_its_own() -> None:
    card = samples.etch_card()
    ways = [setting(card).plan]
    made = plan(Shared(card), Way(ways[0].paper, 1, True, "snug"), 4.0)
    loose = plan(Shared(card), Way(ways[0].paper, 1, True, "loose"), 4.0)
    assert len(made.blocks) < len(loose.blocks)
    assert made.needed < loose.needed
