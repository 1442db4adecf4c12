"""The demo lab's cards and papers as a build sets them, once for all tests."""

import datetime
from functools import cache
from pathlib import Path

from generator.pipeline import check
from generator.pipeline.marks import card_marks
from generator.pipeline.standing import Shown, show_standing
from generator.reading import LabRead, open_folder, read_lab
from generator.sums import Known
from generator.views.card import CardView
from generator.views.filling.card import CardFacts, card_view
from generator.views.filling.door_sign import door_sign_view, unattended_steps

ROOT = Path(__file__).parents[2]
SITE = "https://circuits.larkmere.example/"
LINE = "copper-the-holes"


@cache
def _read() -> LabRead:
    return read_lab(open_folder(ROOT / "procedures", "procedures"))


@cache
def shown() -> Shown:
    checked = check(_read(), datetime.date(2026, 11, 25))
    assert not checked.has_errors
    assert checked.lab is not None
    return Shown(checked.lab, show_standing(_read(), checked, True)[0])


@cache
def facts() -> CardFacts:
    """What a build knows besides, the lab's own formulas with it."""
    known = Known(_read().formulas.formulas).all()
    return CardFacts({formula.name: formula for formula in known}, SITE)


@cache
def all_cards() -> tuple[CardView, ...]:
    """Every card and door sign of the lab, classes and other languages too, marked as a build marks them."""
    mark = card_marks(shown(), SITE)
    found = []
    for study in shown().studies:
        found += [mark(study, card, card_view(study, card, facts())) for card in study.procedure.cards]
        found += [door_sign_view(study, step, facts()) for step in unattended_steps(study)]
    return tuple(found)


def name(card: CardView) -> str:
    """What a test calls a card: "copper-the-holes/etch-card"."""
    return f"{card.procedure}/{card.card}"


@cache
def line_cards() -> tuple[CardView, ...]:
    """The cards of the line alone."""
    return tuple(card for card in all_cards() if card.procedure == LINE)
