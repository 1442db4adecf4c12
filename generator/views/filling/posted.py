"""What is posted, as pages show it: issue and history of a procedure, and the cards on the walls."""

import datetime
from collections.abc import Iterator, Mapping
from dataclasses import replace

from generator.model import Card
from generator.model.posted import IssueHead, Withdrawal
from generator.posting.copies import Hanging, hanging
from generator.posting.shelf import Shelf
from generator.study import Study
from generator.views.addresses import card_path, procedure_address
from generator.views.filling.prints import prints_view
from generator.views.filling.replace_list import look_groups, replace_groups
from generator.views.filling.sheets_held import day_words
from generator.views.filling.words import low, role_title
from generator.views.posted import (
    ChangeView,
    CopyView,
    CurrentCardView,
    IssueView,
    PostedView,
    PrintsView,
    StandingView,
)
from generator.views.shown import BannerView

_GROUPS = {"ppe": "wear", "order": "order"}
_STATES = {"withdrawn": "take it down: withdrawn", "not posted": "take it down: no such card is posted"}


def standing_view(
    study: Study, shelf: Shelf, status: str, edited: bool, due: datetime.date | None, codes: Mapping[str, str]
) -> StandingView:
    """How a procedure stands; `codes` are those of a draft's cards, `due` the day of its next review."""
    id = str(study.procedure.id).partition(".")[0]
    head = shelf.head(id)
    banners = tuple(_banners(study, status, head, shelf.withdrawn(id), edited, due))
    if head is None or status == "draft":
        cards = {name: f"draft · {code}" for name, code in codes.items()}
        history = tuple(_history(study, shelf, id))
        return StandingView(code="", banners=banners, cards=cards, history=history)
    issue = f"{head.number}, posted {day_words(head.posted)}"
    new = f"Changed in issue {head.number}"
    marks = (
        {str(step): new for step, number in head.steps.items() if number == head.number}
        if head.number > 1
        else {}
    )
    cards = {name: f"issue {card.issue} · {card.code}" for name, card in head.cards.items()}
    return StandingView(issue, str(head.check_code), banners, marks, cards, tuple(_history(study, shelf, id)))


def _banners(
    study: Study,
    status: str,
    head: IssueHead | None,
    withdrawn: Withdrawal | None,
    edited: bool,
    due: datetime.date | None,
) -> Iterator[BannerView]:
    if withdrawn:
        when = f"Withdrawn on {day_words(withdrawn.withdrawn)}: do not use"
        yield BannerView("withdrawn", when, withdrawn.because)
    if status == "draft" and head is None:
        yield BannerView("draft", "Draft, never posted", "Nobody has approved it yet. Do not work by it.")
    elif status == "draft":
        number = head.number if head else ""
        text = f"It differs from issue {number}, which is the posted one. Do not work by it."
        yield BannerView("draft", "Draft", text)
    elif edited and not withdrawn:
        yield BannerView("note", "A change is being prepared", "This page shows what is posted.")
    if due and due < study.today and status != "draft":
        yield BannerView("overdue", "Review overdue", f"It was to be reviewed by {day_words(due)}.")


def _history(study: Study, shelf: Shelf, id: str) -> Iterator[IssueView]:
    """Newest first."""
    for file in reversed(shelf.issues.get(id, ())):
        if file.head is None:
            continue
        head = file.head
        seen = f", seen by the {_role(study, str(head.safety_seen_by))}" if head.safety_seen_by else ""
        approved = f"Approved by the {_role(study, str(head.approved_by))}{seen}."
        changes = tuple(
            ChangeView(_GROUPS.get(change.group, change.group), str(change.text)) for change in head.changes
        )
        gone = shelf.withdrawals.get((id, head.number))
        reason = (
            f"{_sentence(str(head.reason))} Withdrawn on {day_words(gone.withdrawn)}: {gone.because}"
            if gone
            else _sentence(str(head.reason))
        )
        yield IssueView(str(head.number), day_words(head.posted), reason, approved, changes)


def _sentence(text: str) -> str:
    return text if text.endswith((".", "!", "?")) else f"{text}."


def _role(study: Study, id: str) -> str:
    return low(role_title(study.lab, id))


def posted_view(
    shelf: Shelf,
    cards: tuple[CurrentCardView, ...],
    papers: tuple[PrintsView, ...],
    today: datetime.date,
    files: frozenset[str],
    room: str = "",
) -> PostedView:
    """The lists of copies and of cards; `cards` and `papers` are those of every procedure that is shown.

    `room` is the lab's name, for what is printed.
    """
    by_name = {f"{card.procedure}/{card.card}": card for card in cards}
    titles = {name: card.title for name, card in by_name.items()}
    hung = hanging(shelf, today)
    return PostedView(
        tuple(_copy(one, titles, files) for one in hung),
        (*cards, *_gone(shelf, cards)),
        built=today.isoformat(),
        room=room,
        day=day_words(today),
        replace=tuple(replace_groups(hung, by_name, files)),
        look=tuple(look_groups(hung, by_name)),
        wrong=sum(one.is_wrong for one in hung),
        prints=tuple(prints_view(papers, files)),
    )


def current_cards(
    shelf: Shelf, study: Study, status: str, codes: Mapping[str, str], files: frozenset[str]
) -> Iterator[CurrentCardView]:
    """The cards of a study as they are posted, also by ids that they had; `codes` are those of a draft's."""
    for card in study.procedure.cards:
        now = _current(shelf, study, card, status, codes, files)
        yield now
        yield from _renamed(shelf, study, card, now)


def _renamed(shelf: Shelf, study: Study, card: Card, now: CurrentCardView) -> Iterator[CurrentCardView]:
    """A card under the id that it was posted with before: no code of it is current, its successor is."""
    id, _, tail = str(study.procedure.id).partition(".")
    head = shelf.head(id)
    old, new = (f"{tail}/{name}" if tail else str(name) for name in (card.was, card.id))
    if card.was and head and new in head.cards and old not in head.cards:
        yield replace(now, card=str(card.was), code="", codes=tuple(_codes(shelf, id, old)))


def _current(
    shelf: Shelf, study: Study, card: Card, status: str, codes: Mapping[str, str], files: frozenset[str]
) -> CurrentCardView:
    id, _, tail = str(study.procedure.id).partition(".")
    name = f"{tail}/{card.id}" if tail else str(card.id)
    head, withdrawn = shelf.head(id), shelf.withdrawn(id)
    found = head.cards.get(name) if head else None
    pdf = card_path(str(study.procedure.id), str(card.id))
    return CurrentCardView(
        str(study.procedure.id),
        str(card.id),
        f"{study.procedure.title}: {card.title}" + (f" ({card.language})" if card.language else ""),
        str(found.issue) if found else "",
        str(found.code) if found else codes.get(name, ""),
        pdf if pdf in files and status == "posted" else "",
        procedure_address(str(study.procedure.id)),
        f"Withdrawn on {day_words(withdrawn.withdrawn)}. {withdrawn.because}" if withdrawn else "",
        tuple(_since(shelf, id, name)),
        tuple(_codes(shelf, id, name)),
    )


def _gone(shelf: Shelf, there: tuple[CurrentCardView, ...]) -> Iterator[CurrentCardView]:
    """Cards of earlier issues that are posted no more."""
    known = {f"{card.procedure}/{card.card}" for card in there}
    for id, files in shelf.issues.items():
        for name in dict.fromkeys(str(name) for file in files if file.head for name in file.head.cards):
            tail, _, card = name.rpartition("/")
            procedure = f"{id}.{tail}" if tail else id
            if f"{procedure}/{card}" not in known:
                text = "This card is posted no more. Take it down."
                yield CurrentCardView(procedure, card, f"{procedure}/{card}", "", "", "", "", text)


def _since(shelf: Shelf, id: str, name: str) -> Iterator[tuple[str, tuple[str, ...]]]:
    """For every issue but the newest, what this card prints otherwise since then."""
    heads = [file.head for file in shelf.issues.get(id, ()) if file.head]
    for index, head in enumerate(heads[:-1]):
        later = [str(c.text) for one in heads[index + 1 :] for c in one.changes if name in map(str, c.cards)]
        yield str(head.number), tuple(dict.fromkeys(later))


def _codes(shelf: Shelf, id: str, name: str) -> Iterator[tuple[str, str]]:
    """Every check code that the card ever had, with the issue that is printed beside it."""
    for file in shelf.issues.get(id, ()):
        found = file.head.cards.get(name) if file.head else None
        if file.head and found:
            yield str(found.code), str(found.issue)


def _copy(one: Hanging, titles: Mapping[str, str], files: frozenset[str]) -> CopyView:
    card = str(one.copy.card)
    home, _, name = card.partition("/")
    path = card_path(home, name)
    state = _STATES.get(one.state, f"replace it with issue {one.issue}\u00a0·\u00a0{one.code}")
    if one.state == "current":
        state = f"look at it, due {day_words(one.look_due)}" if one.look_due else "current"
    title = f"{titles.get(card, card)}, copy {one.copy.copy_}"
    issue = f"{one.copy.issue}\u00a0·\u00a0{one.copy.code}"
    return CopyView(title, path if path in files else "", issue, str(one.copy.hangs), state, one.is_wrong)
