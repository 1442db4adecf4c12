"""Set every wall card in type, and judge what came out."""

from collections.abc import Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

from generator.checks.sums import card_drops_hazard, card_too_small
from generator.checks.sums.card_too_small import Part
from generator.model import Card
from generator.outputs.press import card_pdf, card_svg, fit
from generator.outputs.site import SiteFile
from generator.pipeline.card_demands import demanded, shown
from generator.pipeline.marks import Mark
from generator.problems import Level, Location, NewelError, Problem
from generator.study import Study
from generator.views.addresses import card_path
from generator.views.card import CardView
from generator.views.filling.card import CardFacts, card_view

_WORKERS = 2


@dataclass(frozen=True, slots=True)
class SetCard:
    """A card with its view; `files` are its PDF and its drawing, none where it does not fit."""

    study: Study
    card: Card
    view: CardView
    files: tuple[SiteFile, ...]
    problems: tuple[Problem, ...]


def set_cards(studies: Iterable[Study], facts: CardFacts, mark: Mark | None = None) -> tuple[SetCard, ...]:
    """All cards of the studies, in their order; `mark` adds how each stands once its content is there."""
    jobs = [(study, card) for study in studies for card in study.procedure.cards]
    with ThreadPoolExecutor(_WORKERS) as pool:
        return tuple(pool.map(lambda job: _set_card(job[0], job[1], facts, mark), jobs))


def _set_card(study: Study, card: Card, facts: CardFacts, mark: Mark | None) -> SetCard:
    content = card_view(study, card, facts)
    view = mark(study, card, content) if mark else content
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
        parts = [
            Part(part.first, part.last, tuple(part.stages), part.letter_height) for part in found.proposal
        ]
        needed = max(found.lines_needed, found.lines_there + 1)
        larger = [f"{size} with letters of {letter:.1f} mm" for size, letter in found.larger]
        yield from card_too_small.judge(card, needed, found.lines_there, found.least, parts, larger)


def _dropped(study: Study, card: Card, view: CardView) -> Iterator[Problem]:
    """The rule's own eyes: what the card shows against a second, plain reading of what its steps have."""
    if not card.stages:
        return
    there, wanted = shown(view), demanded(study, card)
    for kind, things in wanted.items():
        yield from card_drops_hazard.left_out(card, kind, there[kind], things)


def _refused(bad: NewelError, where: Location) -> Problem:
    """What the press cannot print: a letter that no font has, a word longer than a line."""
    return Problem(
        "card-too-small" if bad.id == "card-too-small" else "unreadable",
        Level.ERROR,
        where,
        bad.what,
        bad.hint or "write it in other words",
    )
