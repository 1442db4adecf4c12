"""A card's finished data and its fixed words."""

from dataclasses import FrozenInstanceError, fields

import pytest

from generator.views.card import CardStep, CardView
from generator.views.card_words import CARD_WORDS, ENGLISH, SPANISH, card_words

VERBS = (
    "wear", "open", "close", "put-in", "take-out", "rinse", "dry", "clean", "empty", "mount", "set",
    "switch-off", "claim", "save", "release", "check", "hold", "weigh", "add", "mix", "pour", "heat",
    "cool", "wait", "act",
)  # fmt: skip


def a_card() -> CardView:
    return CardView("c", "p", "Card", "en", "A4", 1000.0, "2026-11-25", "https://x.example/", ENGLISH.caution)


def test_a_card_cannot_be_changed() -> None:
    card = a_card()
    with pytest.raises(FrozenInstanceError):
        card.title = "other"  # type: ignore[misc]


def test_equal_cards_are_one_card() -> None:
    assert len({a_card(), a_card()}) == 1


def test_a_step_needs_only_four_texts() -> None:
    step = CardStep("open-1", "3", "OPEN", "Lid off.")
    assert step.marks == ()
    assert step.dwell_shown == ""


@pytest.mark.parametrize("words", CARD_WORDS, ids=lambda words: words.language)
def test_every_fixed_word_is_there(words: object) -> None:
    assert words in CARD_WORDS
    for field in fields(ENGLISH):
        assert getattr(words, field.name)


@pytest.mark.parametrize("words", CARD_WORDS, ids=lambda words: words.language)
def test_every_verb_and_mark_has_a_word(words: object) -> None:
    assert tuple(getattr(words, "verbs")) == VERBS  # noqa: B009
    assert set(getattr(words, "marks")) == {  # noqa: B009
        "dry", "wet", "last-mains", "hands", "near", "away", "current-first",
    }  # fmt: skip


def test_a_language_is_found_by_its_first_part() -> None:
    assert card_words("es-MX") is SPANISH
    assert card_words("en") is ENGLISH
    assert card_words("fi") is ENGLISH


def test_the_caution_names_what_stands_above_the_card() -> None:
    for word in ("supplier", "safety office", "local codes", "licensed practice"):
        assert word in ENGLISH.caution
