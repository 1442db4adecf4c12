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
from generator.pipeline.kept import NOTHING_KEPT, Kept, kept_or_made, key_of
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


def set_cards(
    studies: Iterable[Study], facts: CardFacts, mark: Mark | None = None, kept: Kept = NOTHING_KEPT
) -> tuple[SetCard, ...]:
    """All cards of the studies, in their order; `mark` adds how each stands once its content is there."""
    jobs = [(study, card) for study in studies for card in study.procedure.cards]
    if not jobs:
        return ()
    with ThreadPoolExecutor(_WORKERS) as pool:
        return tuple(pool.map(lambda job: _set_card(job[0], job[1], facts, mark, kept), jobs))


def _set_card(study: Study, card: Card, facts: CardFacts, mark: Mark | None, kept: Kept) -> SetCard:
    content = card_view(study, card, facts)
    view = mark(study, card, content) if mark else content
    problems = [*_dropped(study, card, view)]
    try:
        problems += () if fits(view, kept) else _too_small(card, view)
        files = () if problems else tuple(_print(study, card, view, kept))
    except NewelError as bad:
        problems.append(_refused(bad, card.where))
        files = ()
    return SetCard(study, card, view, files, tuple(problems))


def fits(view: CardView, kept: Kept) -> bool:
    """Whether a card fits its sheet; that it does is kept, why it does not is measured every time."""
    key = key_of("fits", view)
    if key and kept.get(key) is not None:
        return True
    found = fit(view).fits
    if found and key:
        kept.put(key, b"fits")
    return found


def printed_card(view: CardView, kept: Kept) -> bytes:
    """The PDF of a card that fits."""
    return kept_or_made(kept, key_of("card pdf", view), lambda: card_pdf(view))


def _print(study: Study, card: Card, view: CardView, kept: Kept) -> Iterator[SiteFile]:
    id = str(study.procedure.id)
    yield SiteFile(card_path(id, str(card.id), "pdf"), printed_card(view, kept))
    svg = kept_or_made(kept, key_of("card svg", view), lambda: card_svg(view).encode())
    yield SiteFile(card_path(id, str(card.id), "svg"), svg)


def _too_small(card: Card, view: CardView) -> Iterator[Problem]:
    found = fit(view)
    if not found.fits:
        parts = [
            Part(part.first, part.last, tuple(part.stages), part.letter_height) for part in found.proposal
        ]
        needed = max(found.lines_needed, found.lines_there + 1)
        larger = [f"{size} with letters of {letter:.1f} mm" for size, letter in found.larger]
        yield from card_too_small.judge(
            card, needed, found.lines_there, found.least, parts, larger, found.nearer
        )


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
