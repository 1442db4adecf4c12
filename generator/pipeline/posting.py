"""Post and withdraw: the changes since the last issue, then a refusal or the text to write."""

import datetime
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import Any

from generator.model import Lab
from generator.pipeline.cards import set_cards
from generator.pipeline.changes import Comparison, ToldChange, compare
from generator.pipeline.check import Checked
from generator.pipeline.contents import Drafted, draft_of, known_formulas
from generator.pipeline.posted_pictures import pictures_to_keep
from generator.posting.approval import Refusal, deciding_approver, refusals
from generator.posting.change import Change
from generator.posting.code import check_code
from generator.posting.copies import Hanging, wrong_copies
from generator.posting.issue import open_issue, write_issue, write_withdrawal
from generator.posting.shelf import Shelf
from generator.problems import Level, Problem
from generator.reading import LabRead
from generator.views.filling.card import CardFacts

# Found because something is posted: what mends them is to post again.
_MENDED = ("copy-stale", "review-overdue", "translation-stale")


@dataclass(frozen=True, slots=True)
class Wish:
    """What the person asks for: why, who approved it, whether the safety office has seen it.

    `review` notes that somebody has read it again although nothing changed.
    """

    reason: str
    approved_by: str
    safety_seen_by: str = ""
    wording_only: bool = False
    review: bool = False


@dataclass(frozen=True, slots=True)
class Refused:
    """Why a procedure is not posted: problems of its files, or rules of approval."""

    id: str
    refusals: tuple[Refusal, ...] = ()
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True, slots=True)
class Ready:
    """An issue ready to be written to `file`, below the lab's folder; `shelf` is how all will stand then.

    `pictures` are to be kept first: path of each and where to keep it.
    """

    id: str
    number: int
    file: str
    text: str
    changes: tuple[ToldChange, ...]
    cards: tuple[str, ...]
    shelf: Shelf
    today: datetime.date
    pictures: tuple[tuple[str, str], ...] = ()

    @property
    def replace(self) -> tuple[Hanging, ...]:
        """Copies of this procedure's cards that are wrong once it is posted."""
        mine = (self.id + "/", self.id + ".")
        return tuple(
            one for one in wrong_copies(self.shelf, self.today) if str(one.copy.card).startswith(mine)
        )


def post(read: LabRead, checked: Checked, id: str, wish: Wish) -> Ready | Refused:
    """An issue of one procedure from its files as they stand, or why not."""
    problems = tuple(_in_the_way(read, checked, id))
    if problems or checked.lab is None or read.lab is None:
        return Refused(id, problems=problems)
    drafted, shelf = draft_of(read, checked, id), checked.shelf
    formulas = known_formulas(read)
    set_problems = tuple(
        p for card in set_cards(drafted.studies.values(), CardFacts(formulas)) for p in card.problems
    )
    if any(problem.level is Level.ERROR for problem in set_problems):
        return Refused(id, problems=set_problems)
    found = compare(read, checked, drafted)
    if _is_posted_already(shelf, id, found) and not wish.review:
        return Refused(id, (_nothing_new(shelf, id),))
    asked = (*(one.change for one in found.changes), *_besides(shelf, drafted, found.changes))
    if wish.wording_only and any(change.group != "wording" for change in asked):
        return Refused(
            id, (Refusal("more than wording has changed", "post it on its own, with its approver"),)
        )
    refused = tuple(refusals(read.lab, drafted.procedure, asked, wish.approved_by, wish.safety_seen_by))
    if refused:
        return Refused(id, refused)
    return _ready(drafted, shelf, found, wish, checked.lab.today, read.lab)


def _is_posted_already(shelf: Shelf, id: str, found: Comparison) -> bool:
    return bool(shelf.head(id)) and not shelf.withdrawn(id) and not found.changes


def _nothing_new(shelf: Shelf, id: str) -> Refusal:
    """Perhaps somebody else was quicker; an empty issue would hide that."""
    head = shelf.head(id)
    assert head is not None
    return Refusal(
        f"nothing differs from issue {head.number}, posted on {head.posted} ({head.reason})",
        "to note that it was read again and nothing had to change, add --review",
    )


def _in_the_way(read: LabRead, checked: Checked, id: str) -> Iterator[Problem]:
    """Errors of the whole lab, and warnings of this procedure that nobody accepted."""
    files = {name for base, (name, _) in read.folder.procedures.items() if base == id}
    files |= {name for (base, _), (name, _) in read.folder.sides.items() if base == id}
    for problem in checked.problems:
        warned = (
            problem.level is Level.WARNING and problem.where.file in files and problem.rule not in _MENDED
        )
        if problem.level is Level.ERROR or warned:
            yield problem


def _besides(shelf: Shelf, drafted: Drafted, told: tuple[ToldChange, ...]) -> Iterator[Change]:
    """What needs an approver although no fact changed: a first issue, a return, a review."""
    head = shelf.head(drafted.id)
    if head is None:
        yield Change("procedure", drafted.id, "", "", "", "order", "new")
        for (noun, id, field), hazards in drafted.facts.items():
            if field == "hazards" and hazards and noun in ("mixtures", "substances", "places"):
                yield Change(noun, id, field, "", hazards, "new hazard")
    elif shelf.withdrawn(drafted.id) or not told:
        yield Change("procedure", drafted.id, "", "", "", "order", "new")


def _ready(
    drafted: Drafted,
    shelf: Shelf,
    found: Comparison,
    wish: Wish,
    today: datetime.date,
    lab: Lab,
) -> Ready:
    last = shelf.last(drafted.id)
    number = last.head.number + 1 if last and last.head else 1
    head: dict[str, Any] = {
        "number": str(number),
        "posted": today.isoformat(),
        **({"written_by": str(drafted.procedure.written_by)} if drafted.procedure.written_by else {}),
        "approver": deciding_approver(lab, drafted.procedure, (one.change for one in found.changes)),
        "approved_by": wish.approved_by,
        **({"safety_seen_by": wish.safety_seen_by} if wish.safety_seen_by else {}),
        "reason": wish.reason,
        "check_code": drafted.code,
        **({"before": last.seal} if last else {}),
        "changes": [_written(one, found) for one in found.changes],
        "stages": [str(stage.stage) for stage in drafted.procedure.stages],
        "steps": _last_changed(drafted, shelf, found.changes, number),
        "cards": _cards(drafted.id, shelf, found, number),
    }
    file = f"posted/{drafted.id}/{number}.yml"
    text = write_issue(drafted.id, head, drafted.content)
    fresh = open_issue(f"{shelf.register_file.removesuffix('posted/copies.yml')}{file}", text.encode())
    after = replace(shelf, issues={**shelf.issues, drafted.id: (*shelf.issues.get(drafted.id, ()), fresh)})
    pictures = pictures_to_keep(drafted.content.get("pictures", {}))
    return Ready(drafted.id, number, file, text, found.changes, found.cards, after, today, pictures)


def _written(one: ToldChange, found: Comparison) -> dict[str, Any]:
    out: dict[str, Any] = {"group": one.change.group, "text": one.text}
    cards = [card for card in one.cards if card in found.prints]
    rows = (("steps", list(one.steps)), ("cards", cards), ("affects", list(one.affects)))
    return out | {name: row for name, row in rows if row}


def _last_changed(drafted: Drafted, shelf: Shelf, told: Iterable[ToldChange], number: int) -> dict[str, str]:
    """In which issue each step last changed; a step that has another id now keeps its issue."""
    head = shelf.head(drafted.id)
    before = {str(id): str(issue) for id, issue in head.steps.items()} if head else {}
    renamed = {one.change.id: one.change.old for one in told if one.change.kind == "renamed"}
    reached = {step for one in told for step in one.steps if one.change.kind != "renamed"}
    out = {}
    for located in drafted.studies[""].steps():
        id = str(located.step.id)
        old = before.get(renamed.get(id, id))
        out[id] = str(number) if id in reached or old is None else old
    return out


def _cards(id: str, shelf: Shelf, found: Comparison, number: int) -> dict[str, dict[str, str]]:
    """A card that prints what it printed keeps issue and code: no copy of it is wrong."""
    head = shelf.head(id)
    out = {}
    for name, texts in found.prints.items():
        before = head.cards.get(name) if head else None
        kept = before if before and name not in found.cards else None
        issue, code = (kept.issue, str(kept.code)) if kept else (number, check_code(texts))
        out[name] = {"issue": str(issue), "code": code}
    return out


def withdraw(shelf: Shelf, id: str, because: str, today: datetime.date) -> tuple[str, str] | None:
    """The file and the text that withdraw the newest issue; None where there is none to withdraw."""
    head = shelf.head(id)
    if head is None or shelf.withdrawn(id):
        return None
    fields = {"issue": str(head.number), "withdrawn": today.isoformat(), "because": because}
    return f"posted/{id}/{head.number}.withdrawn.yml", write_withdrawal(id, fields)
