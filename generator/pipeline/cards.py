"""Set every wall card in type, and judge what came out."""

from collections.abc import Callable, Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

from generator.checks.sums import card_drops_hazard, card_too_small
from generator.checks.sums.card_too_small import Part
from generator.model import Card
from generator.outputs.press import card_pdf, card_svg, fit
from generator.outputs.site import SiteFile
from generator.problems import Level, Location, NewelError, Problem
from generator.study import Study
from generator.views.addresses import card_path
from generator.views.card import CardView
from generator.views.filling.card import CardFacts, card_view

_WORKERS = 2
Progress = Callable[[int, int], None]


@dataclass(frozen=True, slots=True)
class SetCard:
    """A card with its view; `files` are its PDF and its drawing, none where it does not fit."""

    study: Study
    card: Card
    view: CardView
    files: tuple[SiteFile, ...]
    problems: tuple[Problem, ...]


def set_cards(studies: Iterable[Study], facts: CardFacts) -> tuple[SetCard, ...]:
    """All cards of the studies, in their order; the press runs on as many threads as help."""
    jobs = [(study, card) for study in studies for card in study.procedure.cards]
    with ThreadPoolExecutor(_WORKERS) as pool:
        return tuple(pool.map(lambda job: _set_card(*job, facts), jobs))


def _set_card(study: Study, card: Card, facts: CardFacts) -> SetCard:
    view = card_view(study, card, facts)
    problems = [*_dropped(study, card, view)]
    try:
        problems += _too_small(card, view)
        files = () if problems else tuple(_print(study, card, view))
    except NewelError as bad:
        problems.append(_refused(bad, card.where))
        files = ()
    return SetCard(study, card, view, files, tuple(problems))


def _print(study: Study, card: Card, view: CardView) -> Iterator[SiteFile]:
    id = str(study.procedure.id)
    yield SiteFile(card_path(id, str(card.id), "pdf"), card_pdf(view))
    yield SiteFile(card_path(id, str(card.id), "svg"), card_svg(view).encode())


def _too_small(card: Card, view: CardView) -> Iterator[Problem]:
    found = fit(view)
    if not found.fits:
        parts = [Part(part.first, part.last, tuple(part.stages)) for part in found.proposal]
        needed = max(found.lines_needed, found.lines_there + 1)
        yield from card_too_small.judge(card, needed, found.lines_there, found.least, parts, found.larger)


def _dropped(study: Study, card: Card, view: CardView) -> Iterator[Problem]:
    """The rule's own eyes: what the card shows against a second, plain reading of what its steps have."""
    if not card.stages:
        return
    wear, hazards = {}, {}
    for moment in study.walk.straight:
        if moment.stage.stage in card.stages:
            step, place = str(moment.step.id), study.place(moment.step.at)
            wear[step] = {str(study.lab.ppe[p].title) for p in moment.before.names("worn") if p in study.lab.ppe}  # type: ignore[index]
            words = place.hazards if place else ()
            hazards[step] = {str(study.lab.hazard_words[w].title) for w in words if w in study.lab.hazard_words}
    shown_wear = {piece.title for piece in view.wear}
    if view.words.language == str(study.lab.lab.language):
        yield from card_drops_hazard.judge(card, {h.text for h in view.hazards}, shown_wear, hazards, wear)


def _refused(bad: NewelError, where: Location) -> Problem:
    """What the press cannot print: a letter that no font has, a word longer than a line."""
    return Problem("card-too-small" if bad.id == "card-too-small" else "unreadable", Level.ERROR, where, bad.what,
                   bad.hint or "write it in other words")
