"""Everything that is printed of a procedure, one after the other."""

from collections.abc import Mapping

from generator.formulas import Formula
from generator.pipeline.cards import set_cards
from generator.pipeline.day_plans import set_day_plans
from generator.pipeline.hazard_prints import print_procedure
from generator.pipeline.kept import Kept
from generator.pipeline.marks import card_marks
from generator.pipeline.paper import set_paper
from generator.pipeline.printed import Printed, Sets
from generator.pipeline.standing import Shown
from generator.views.filling.card import CardFacts


def print_shown(
    shown: Shown, formulas: Mapping[str, Formula], site_url: str, sets: Sets | None, kept: Kept
) -> Printed:
    """Cards, what hangs beside them, day plans; then the hazard papers of what posts cards, or of all.

    `sets` takes what the print of everything needs, and asks for the papers of all. A document takes some
    50 ms to set, so that a thousand procedures without a card wait until asked for.
    """
    facts = CardFacts(formulas, site_url)
    cards = set_cards(shown.studies, facts, card_marks(shown, site_url), kept)
    paper = set_paper(shown, facts, kept)
    plans = set_day_plans(shown, facts, kept)
    posting = tuple(study for study in shown.studies if sets is not None or study.procedure.cards)
    hazards = print_procedure(shown, posting, kept)
    if sets is not None:
        sets.cards.extend(cards)
        sets.signs.extend(paper.signs)
        sets.plans.extend(str(one.procedure.title) for one in shown.studies if plans.own(one))
    set_files = (file for card in cards for file in card.files)
    found = (problem for card in cards for problem in card.problems)
    return Printed(
        (*set_files, *paper.files, *plans.files, *hazards.files),
        (*found, *paper.problems, *plans.problems, *hazards.problems),
        plans.days,
    )
