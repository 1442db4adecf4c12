"""Set what is printed beside the cards: run sheets, door signs, check-off list, one print of all."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from generator.model import Located, Step
from generator.outputs.press import sheet_of
from generator.outputs.press.document import document_pdf, document_sheets
from generator.outputs.press.door import print_book
from generator.outputs.press.drawing import Sheet
from generator.outputs.site import SiteFile
from generator.pipeline.cards import SetCard, fits, printed_card
from generator.pipeline.kept import NOTHING_KEPT, Kept, kept_or_made, key_of
from generator.pipeline.posted_problems import review_due
from generator.pipeline.standing import Shown
from generator.problems import Level, NewelError, Problem
from generator.study import LabStudy, Study
from generator.views.addresses import (
    CHECK_OFF_PATH,
    PRINT_ALL_PATH,
    door_sign_path,
    run_sheet_path,
)
from generator.views.card import CardView
from generator.views.filling.card import CardFacts
from generator.views.filling.check_off import check_off_view
from generator.views.filling.cover import PostedSheet, cover_view
from generator.views.filling.door_sign import door_sign_view, unattended_steps
from generator.views.filling.run_sheet import run_sheet_view
from generator.views.paper import PaperView

# A door sign that is full on the first sheet is set on the next, then for a reader who stands nearer.
_SIGNS = (("A4", 1500.0), ("A3", 1500.0), ("A3", 1000.0))


@dataclass(frozen=True, slots=True)
class SetPaper:
    """The files beside the cards, the door signs among them by their views, and what could not be set."""

    files: tuple[SiteFile, ...]
    signs: tuple[CardView, ...]
    problems: tuple[Problem, ...]


def set_paper(shown: Shown, facts: CardFacts, kept: Kept = NOTHING_KEPT) -> SetPaper:
    """Run sheet and door signs of every procedure as it stands."""
    files: list[SiteFile] = []
    signs: list[CardView] = []
    problems: list[Problem] = []
    for study in shown.studies:
        try:
            own = standing_facts(shown, study, facts)
            # A run sheet asks for the issue of the card that was followed; without a card there is none.
            files += [_run_sheet(study, own, kept)] if study.procedure.cards else []
            for step in unattended_steps(study):
                sign = _sign(study, step, own, kept)
                signs.append(sign)
                files.append(SiteFile(door_sign_path(sign.procedure, str(step.id)), printed_card(sign, kept)))
        except NewelError as bad:
            problems.append(refused(study.procedure, bad))
    return SetPaper(tuple(files), tuple(signs), tuple(problems))


def set_check_off(lab: LabStudy, kept: Kept = NOTHING_KEPT) -> tuple[SiteFile | None, tuple[Problem, ...]]:
    """The lab's check-off list, None where it has none or what was refused of it."""
    view = check_off_view(lab)
    try:
        return (SiteFile(CHECK_OFF_PATH, _document(view, kept)), ()) if view else (None, ())
    except NewelError as bad:
        return None, (refused(lab.lab.lab, bad),)


def standing_facts(shown: Shown, study: Study, facts: CardFacts) -> CardFacts:
    """How the procedure stands: its status, issue, check code, and until when it is good."""
    standing = shown.of(study)
    head = standing.head if standing.status != "draft" else None
    if head is None:
        return replace(facts, status=standing.status)
    due = review_due(study.procedure, head)
    return replace(
        facts,
        status=standing.status,
        issue=str(head.number),
        check_code=str(head.check_code),
        good_until=due.isoformat() if due else "",
        dated=head.posted.isoformat(),
    )


def _document(view: PaperView, kept: Kept) -> bytes:
    return kept_or_made(kept, key_of("document pdf", view), lambda: document_pdf(view))


def _run_sheet(study: Study, facts: CardFacts, kept: Kept) -> SiteFile:
    view = run_sheet_view(study, facts)
    return SiteFile(run_sheet_path(str(study.procedure.id)), _document(view, kept))


def _sign(study: Study, step: Step, facts: CardFacts, kept: Kept) -> CardView:
    view = door_sign_view(study, step, facts)
    ways = (replace(view, size=size, read_from=distance) for size, distance in _SIGNS)
    return next((way for way in ways if fits(way, kept)), view)


def refused(noun: Located, bad: NewelError) -> Problem:
    """What the press refused: a letter that no font has, or a sign that no sheet holds."""
    return Problem(
        "card-too-small" if bad.id == "card-too-small" else "unreadable",
        Level.ERROR,
        noun.where,
        bad.what,
        bad.hint or "write it in other words",
    )


def print_all(
    lab: LabStudy, cards: Iterable[SetCard], signs: Iterable[CardView], plans: Iterable[str] = ()
) -> SiteFile:
    """One PDF of everything that must be posted, with a cover list that says where each sheet goes.

    `plans` are the procedures that have a day plan, which is hung up only on its day: the cover names them.
    """
    listed = [*_cards(cards), *_signs(signs), *_check_off(lab)]
    titles = tuple(plans)
    entries = tuple(entry for entry, _ in listed)
    covers = document_sheets(cover_view(lab, entries, 1, titles))
    if len(covers) > 1:
        covers = document_sheets(cover_view(lab, entries, len(covers), titles))
    sheets = [*covers, *(sheet for _, drawn in listed for sheet in drawn)]
    title = f"Sheets to post: {lab.lab.lab.title or lab.lab.lab.name}"
    book = print_book(sheets, title, str(lab.lab.lab.language), lab.today.isoformat())
    return SiteFile(PRINT_ALL_PATH, book)


_Listed = tuple[PostedSheet, tuple[Sheet, ...]]


def _cards(cards: Iterable[SetCard]) -> Iterator[_Listed]:
    for card in cards:
        place = card.study.place(str(card.card.post_at)) if card.card.post_at else None
        where = place.title if place else "not said: write post_at"
        title = f"{card.view.title} ({card.view.procedure}/{card.view.card})"
        yield PostedSheet(title, card.card.size, where, _issue(card.view)), (sheet_of(card.view),)


def _signs(signs: Iterable[CardView]) -> Iterator[_Listed]:
    for sign in signs:
        title = f"{sign.tables[0].title} ({sign.procedure}/{sign.card})"
        where = "the door, while it runs"
        yield PostedSheet(title, sign.size, where, _issue(sign)), (sheet_of(sign),)


def _check_off(lab: LabStudy) -> Iterator[_Listed]:
    view = check_off_view(lab)
    if view:
        sheets = document_sheets(view)
        yield PostedSheet(view.title, view.size, "inside the door", "", len(sheets)), sheets


def _issue(view: CardView) -> str:
    if view.status == "withdrawn":
        return "WITHDRAWN"
    return f"{view.issue} · {view.check_code}" if view.issue else view.status
