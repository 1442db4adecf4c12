"""What the rules of posting find: ids that went, reviews due, copies that are wrong, altered files."""

import datetime
from collections.abc import Collection, Iterator
from math import ceil

from generator.checks.posting import (
    copy_stale,
    id_changed,
    issue_altered,
    posted_without_approver,
    review_overdue,
)
from generator.model import Procedure
from generator.model.posted import IssueHead
from generator.posting.copies import Hanging, wrong_copies
from generator.posting.shelf import Shelf
from generator.problems import Location, Problem
from generator.study import LabStudy, Study

_DAY = 86_400


def posted_in_procedure(study: Study, shelf: Shelf, misread: bool = False) -> Iterator[Problem]:
    """Problems of one procedure against what is posted of it; a class is posted with its procedure.

    Where its file is `misread`, an id that is not there may be one that could not be read.
    """
    head = shelf.head(str(study.procedure.id)) if study.class_of is None else None
    if head is not None:
        yield from () if misread else _gone(study, head)
        if not shelf.withdrawn(str(study.procedure.id)):
            yield from _overdue(study, head)


def _gone(study: Study, head: IssueHead) -> Iterator[Problem]:
    it = study.procedure
    steps = [located.step for located in study.steps()]
    cards = [card for card in head.cards if "/" not in card]
    rows = (
        ("stage", list(map(str, head.stages)), [(str(stage.stage), stage.was) for stage in it.stages]),
        ("step", list(map(str, head.steps)), [(str(step.id), step.was) for step in steps]),
        ("card", cards, [(str(card.id), card.was) for card in it.cards]),
    )
    for kind, posted, now in rows:
        there = {id for id, _ in now} | {str(was) for _, was in now if was}
        fresh = [id for id, was in now if id not in posted and not was]
        gone = [id for id in posted if id not in there]
        if gone:
            yield id_changed.at(it.where, kind, gone, fresh)
        if gone and kind == "stage":
            return  # its steps went with it


def _overdue(study: Study, head: IssueHead) -> Iterator[Problem]:
    due = review_due(study.procedure, head)
    if due and due < study.today:
        yield review_overdue.at(
            study.procedure.spot("review_every"), head.posted, due, str(study.procedure.approver)
        )


def review_due(procedure: Procedure, head: IssueHead) -> datetime.date | None:
    """The day by which somebody must have looked at the procedure again; None where it does not say."""
    if procedure.review_every is None:
        return None
    return head.posted + datetime.timedelta(days=ceil(procedure.review_every.si / _DAY))


def posted_in_lab(lab: LabStudy, shelf: Shelf, files: Collection[str]) -> Iterator[Problem]:
    """Problems of the shelf itself; `files` are the ids of the procedures that have a file."""
    yield from shelf.problems
    for altered in shelf.altered:
        yield issue_altered.at(Location(altered.file, 1, 1), altered.what)
    gone = [id for id in shelf.issues if id not in files and shelf.head(id) and not shelf.withdrawn(id)]
    if gone:
        yield id_changed.at(Location(shelf.issues[gone[0]][-1].file, 1, 1), "procedure", gone)
    for id, row in shelf.issues.items():
        for file in row:
            if file.head and not shelf.withdrawals.get((id, file.head.number)):
                yield from _unapproved(Location(file.file, 1, 1), file.head)
    yield from _stale(lab, shelf)


def _unapproved(where: Location, head: IssueHead) -> Iterator[Problem]:
    """The issue itself says what it changes, who approved it, and who should have."""
    wording = bool(head.changes) and all(change.group == "wording" for change in head.changes)
    if not wording and head.approved_by != head.approver:
        yield posted_without_approver.at(where, str(head.number), str(head.approver), str(head.approved_by))


def _stale(lab: LabStudy, shelf: Shelf) -> Iterator[Problem]:
    for one in wrong_copies(shelf, lab.today):
        copy = one.copy
        gone, card, number = one.state != "replace", str(copy.card), str(copy.copy_)
        yield copy_stale.at(copy.where, card, number, str(copy.issue), state_words(one), gone)


def state_words(one: Hanging) -> str:
    """What holds now for a copy that is wrong."""
    if one.state == "withdrawn":
        return "its procedure is withdrawn"
    if one.state == "not posted":
        return "no such card is posted"
    return f"issue {one.issue} is posted"
