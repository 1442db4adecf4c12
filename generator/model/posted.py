"""What posting keeps: the head of an issue, a withdrawal, and the register of laminated copies."""

from typing import Annotated

from pydantic import Field

from generator.model.located import Located
from generator.model.scalars import (
    Count,
    Day,
    Id,
    Listed,
    Name,
    Named,
    OneOf,
    Ref,
    Refs,
    Sentence,
    Sentences,
    Span,
)

GROUPS = ("wording", "time", "limit", "ppe", "chemical", "order", "new hazard")


class IssueCard(Located):
    """A card in an issue: since which issue it has stood as it is, and the check code of what it prints."""

    issue: Count
    code: Sentence


class IssueChange(Located):
    """One change since the issue before, as it was told when the issue was posted."""

    group: Annotated[str, OneOf(*GROUPS, kind="group of changes")]
    text: Sentence
    steps: Refs = ()
    cards: Refs = ()
    affects: Sentences = ()


class IssueHead(Located):
    """Number, day, roles and reason of an issue; in which issue each step and card last changed.

    `before` is the seal of the issue before, so that no issue can be taken out of the row unseen.
    """

    number: Count
    posted: Day
    written_by: Ref | None = None
    approver: Ref
    approved_by: Ref
    safety_seen_by: Ref | None = None
    reason: Sentence
    check_code: Sentence
    before: Sentence | None = None
    changes: Annotated[tuple[IssueChange, ...], Listed] = ()
    stages: Refs = ()
    steps: Annotated[dict[Id, Count], Named] = {}
    cards: Annotated[dict[Name, IssueCard], Named] = {}


class Withdrawal(Located):
    """An issue that must not be followed any more: since when, and why."""

    issue: Count
    withdrawn: Day
    because: Sentence


class LaminatedCopy(Located):
    """One laminated copy: its card (`procedure/card`), number, issue and check code, where it hangs."""

    card: Ref
    copy_: Count = Field(alias="copy")
    issue: Count
    code: Sentence
    hangs: Sentence
    since: Day
    looked_at: Day | None = None


class CopyRegister(Located):
    """Every laminated copy, and how often somebody is to look at each."""

    look_every: Span | None = None
    copies: Annotated[tuple[LaminatedCopy, ...], Listed] = ()
