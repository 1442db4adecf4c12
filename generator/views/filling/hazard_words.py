"""Hazards without a statement, as signs: the lab's own words first, then those that ship."""

from collections.abc import Iterator

from generator.hazards import hazard_word
from generator.model import Lab
from generator.study import LabStudy
from generator.views.filling.words import named
from generator.views.shown import SignView


def word_sign(lab: Lab, id: str, detail: str = "") -> SignView:
    """A hazard word by its warning sign and title."""
    own = lab.hazard_words.get(id)  # type: ignore[call-overload]
    if own:
        return SignView(own.symbol or "", own.title, detail)
    shipped = hazard_word(id)
    return SignView(shipped.symbol, shipped.title, detail) if shipped else SignView("", named(id), detail)


def words_of(study: LabStudy, id: str, detail: str = "") -> Iterator[SignView]:
    """What a mixture or substance can do that no statement says, as resin heats itself in a cup."""
    for word in study.statements_of(id):
        if str(word)[:1] not in "HE":
            yield word_sign(study.lab, str(word), detail)
